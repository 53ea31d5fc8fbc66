import { type AtEnd, atEnd, endEvidence, whyUnknown } from './at-end.ts';
import { type Check, type Outcome, onceOver, type SwapCase } from './check.ts';

export const linksRestored: Check = {
  id: 'links-restored',
  title: 'Both links of both halves up, not crossed',
  judge: (swap) => onceOver(swap, judgeLinks(swap)),
};

function judgeLinks(swap: SwapCase): Outcome {
  const links = (['link-a', 'link-b'] as const).flatMap((signal) =>
    atEnd(swap, signal).map((state) => ({ ...state, signal })),
  );
  const ports = atEnd(swap, 'links');
  const evidence = endEvidence(swap, [...links, ...ports]);
  if (![...links, ...ports].some((s) => s.everLogged)) {
    return { status: 'not-observed', statement: 'The links were never logged.', evidence };
  }
  const down = links.filter((s) => s.value === 'down');
  if (down.length > 0) {
    const said = down.map((s) => `${s.signal.replace('-', ' ')} of half ${s.half}`).join(', ');
    const statement = `At the end ${said} ${down.length === 1 ? 'is' : 'are'} down.`;
    return { status: 'fail', statement, evidence: endEvidence(swap, down) };
  }
  const crossed = ports.filter((s) => s.value === 'crossed');
  if (crossed.length > 0) {
    return {
      status: 'fail',
      statement: `The two links of half ${crossed.map(halfOf).join(' and ')} are crossed.`,
      evidence: endEvidence(swap, crossed),
    };
  }
  const doubtful = ports.filter((s) => s.value === null && s.step?.value === 'crossed');
  if (doubtful.length > 0) {
    const statement = `The two links of half ${doubtful.map(halfOf).join(' and ')} were crossed when last read.`;
    return { status: 'inconclusive', statement, evidence: endEvidence(swap, doubtful) };
  }
  const unknown = links.filter((s) => s.value === null);
  if (unknown.length > 0) {
    const said = unknown.map((s) => `${s.signal.replace('-', ' ')} of half ${s.half}`).join(', ');
    const why = unknown[0] === undefined ? '' : whyUnknown(unknown[0]);
    return { status: 'inconclusive', statement: `Not known at the end: ${said}${why}.`, evidence };
  }
  const straight = ports.some((s) => s.value === 'straight')
    ? ' and not crossed'
    : '; whether they are crossed was not logged';
  return { status: 'pass', statement: `At the end both links of both halves are up${straight}.`, evidence };
}

function halfOf({ half }: AtEnd): string {
  return half ?? '';
}
