import { type ESTree, parseSync, Visitor, type VisitorObject } from 'vite';

/** One small change of a source text. */
export interface Mutant {
  readonly id: number;
  /** Line of the changed expression, counted from 1. */
  readonly line: number;
  readonly from: string;
  readonly to: string;
}

/** A text that holds all its mutants: `isMutant(id)`, a function on `globalThis`, says at each place which one is meant. */
export interface Mutated {
  readonly code: string;
  readonly mutants: readonly Mutant[];
}

/** Another text for an expression. */
interface Change {
  readonly start: number;
  readonly end: number;
  readonly to: string;
}

const swapped: ReadonlyMap<string, string> = new Map([
  ['<', '<='],
  ['<=', '<'],
  ['>', '>='],
  ['>=', '>'],
  ['===', '!=='],
  ['!==', '==='],
  ['+', '-'],
  ['-', '+'],
  ['+=', '-='],
  ['-=', '+='],
  ['Math.min', 'Math.max'],
  ['Math.max', 'Math.min'],
]);
const numeric: ReadonlySet<string> = new Set([...swapped.keys(), '*', '/', '%', '>>', '**']);
/** Methods whose arguments are places in a list or a text. */
const bounded: ReadonlySet<string> = new Set(['slice', 'at', 'subarray', 'splice', 'with']);

/**
 * All mutants of a TypeScript text, numbered from `first` on: comparisons flipped, conditions dropped or decided, bounds
 * and figures one more, + and -, min and max exchanged, filters left out.
 */
export function mutate(text: string, first: number): Mutated {
  const changes = changesOf(text);
  const mutants = changes.map(({ start, end, to }, index) => ({
    id: first + index,
    line: text.slice(0, start).split('\n').length,
    from: text.slice(start, end),
    to,
  }));
  return { code: `const isMutant = globalThis.isMutant; ${withAll(text, changes, first)}`, mutants };
}

function changesOf(text: string): readonly Change[] {
  const { program, errors } = parseSync('source.ts', text);
  if (errors.length > 0) throw new SyntaxError(errors[0]?.message);
  const changes: Change[] = [];
  const say = (node: ESTree.Span): string => text.slice(node.start, node.end);
  const put = ({ start, end }: ESTree.Span, ...to: readonly string[]): void => {
    for (const other of to) changes.push({ start, end, to: other });
  };
  const exchange = (node: ESTree.Span, left: ESTree.Span, operator: string, right: ESTree.Span): void => {
    const other = swapped.get(operator);
    const isText = /^['"`]/.test(say(left)) || /['"`]$/.test(say(right));
    if (other !== undefined && !isText) put(node, `${say(left)} ${other} ${say(right)}`);
  };
  const oneMore = (...nodes: readonly ESTree.Node[]): void => {
    for (const node of nodes) {
      const number = node.type === 'UnaryExpression' ? node.argument : node;
      if (number.type === 'Literal' && typeof number.value === 'number') put(number, `${number.value + 1}`);
    }
  };
  const visitor: VisitorObject = {
    BinaryExpression(node) {
      exchange(node, node.left, node.operator, node.right);
      if (numeric.has(node.operator)) oneMore(node.left, node.right);
    },
    AssignmentExpression(node) {
      exchange(node, node.left, node.operator, node.right);
      if (node.operator !== '=') oneMore(node.right);
    },
    LogicalExpression(node) {
      if (node.operator !== '??') put(node, say(node.left), say(node.right));
    },
    UnaryExpression(node) {
      if (node.operator === '!') put(node, say(node.argument));
    },
    IfStatement: ({ test }) => put(test, 'true', 'false'),
    ConditionalExpression: ({ test }) => put(test, 'true', 'false'),
    MemberExpression(node) {
      if (node.computed) oneMore(node.property);
      const other = swapped.get(say(node));
      if (other !== undefined) put(node, other);
    },
    CallExpression(node) {
      const { callee } = node;
      if (callee.type !== 'MemberExpression' || callee.computed) return;
      if (bounded.has(callee.property.name)) oneMore(...node.arguments);
      const isOptional = callee.optional || say(callee.object).includes('?.');
      if (callee.property.name === 'filter' && !isOptional) put(node, say(callee.object));
    },
  };
  new Visitor(visitor).visit(program);
  return changes.sort((a, b) => a.start - b.start || b.end - a.end);
}

/** The text with every change behind its switch. A change holds the plain text of what it keeps: one is on at a time. */
function withAll(text: string, changes: readonly Change[], first: number): string {
  const write = (from: number, to: number, place: number): readonly [string, number] => {
    let [code, at, next] = ['', from, place];
    for (let change = changes[next]; change !== undefined && change.start < to; change = changes[next]) {
      const { start, end } = change;
      code += text.slice(at, start);
      let switches = '';
      for (let own = changes[next]; own?.start === start && own.end === end; own = changes[next]) {
        switches += `isMutant(${first + next}) ? (${own.to}) : `;
        next += 1;
      }
      const [inner, after] = write(start, end, next);
      code += `(${switches}(${inner}))`;
      [at, next] = [end, after];
    }
    return [code + text.slice(at, to), next];
  };
  return write(0, text.length, 0)[0];
}
