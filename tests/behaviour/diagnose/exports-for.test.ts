import { expect, test } from 'vitest';
import { exportsFor } from '../../../src/diagnose/exports-for.ts';

test('what is wanted first is asked for first, each export once, with the signals it would bring', () => {
  expect(exportsFor(['supply', 'link-b', 'firmware', 'link-a'])).toEqual([
    'the alarms of the supply (supply)',
    'the log of both networks (link-b, link-a)',
    'the identity of both modules (firmware)',
  ]);
  expect(exportsFor(['free-memory', 'partner-ready', 'load'])).toEqual([
    'a poll of load and memory (free-memory, load)',
    'a log of readiness (partner-ready)',
  ]);
});

test('of two that are wanted for several signals the one whose first signal comes earlier', () => {
  expect(exportsFor(['serial', 'restart', 'sync-start', 'model'])).toEqual([
    'the identity of both modules (serial, model)',
    'the event journal of the standby (restart, sync-start)',
  ]);
});

test('nothing is asked for where nothing is missing, or where no export would bring it', () => {
  expect(exportsFor([])).toEqual([]);
  expect(exportsFor(['role'])).toEqual(['a log of the roles (role)']);
  expect(exportsFor(['note'])).toEqual([]);
});
