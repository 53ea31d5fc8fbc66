import { readFileSync } from 'node:fs';
import { parseSync } from '@swc/core';

/**
 * The texts of a TypeScript file: its string literals and templates (`…` for what is put in) that hold a blank or begin
 * with a capital; comments, types and what it imports are none.
 */
export function textsOf(file: string): readonly string[] {
  const found: string[] = [];
  const program: unknown = parseSync(readFileSync(file, 'utf8'), { syntax: 'typescript', target: 'es2022' });
  collect(program, found);
  return found.filter((text) => /\s|^[A-Z]/.test(text));
}

function collect(node: unknown, found: string[]): void {
  if (Array.isArray(node)) {
    for (const one of node) collect(one, found);
    return;
  }
  if (typeof node !== 'object' || node === null) return;
  const parts = new Map<string, unknown>(Object.entries(node));
  const type = parts.get('type');
  if (type === 'ImportDeclaration' || type === 'TsLiteralType') return;
  if (type === 'StringLiteral') found.push(String(parts.get('value')));
  const quasis = parts.get('quasis');
  if (type === 'TemplateLiteral' && Array.isArray(quasis)) found.push(quasis.map(rawOf).join('…'));
  for (const [key, value] of parts) if (key !== 'span' && key !== 'quasis') collect(value, found);
}

function rawOf(quasi: unknown): string {
  return typeof quasi === 'object' && quasi !== null && 'raw' in quasi ? String(quasi.raw) : '';
}
