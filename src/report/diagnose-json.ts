import type { Attempt, Diagnosis, RankedCause } from '../vocabulary.ts';
import { toJson } from './json.ts';
import { isoSentence } from './sentences.ts';
import { bringUpDocument, findingDocument, measureDocument } from './verify-json.ts';

/** The JSON document of `diagnose`. Source: design.md, section 8; what is beyond it comes last. */
export function diagnoseJson(diagnosis: Diagnosis): string {
  const { inputs, pair, stage, bringUps, causes, findings } = diagnosis;
  const { healthy, chosen, half, from, to, sentences, attempts, reference, doubted, unjudged } = diagnosis;
  return toJson({
    schema: 'steadypair/diagnose/1',
    inputs,
    pair,
    stage,
    bringUps: bringUps.map(bringUpDocument),
    causes: causes.map(causeDocument),
    findings: findings.map(findingDocument),
    healthy,
    chosen,
    half,
    from,
    to,
    sentences: sentences.map(isoSentence),
    attempts: attempts.map(attemptDocument),
    reference,
    doubted,
    unjudged,
  });
}

function causeDocument({ id, rank, decibans, for: speaksFor, against, next }: RankedCause): unknown {
  return { id, rank, decibans, for: speaksFor, against, next };
}

function attemptDocument(attempt: Attempt): unknown {
  const { half, cause, start, end, outcome, watched, abort, serial, firmware, stages } = attempt;
  return {
    half,
    cause,
    start,
    end,
    outcome,
    watched,
    abort,
    serial,
    firmware,
    stages: stages.map(({ stage, entered, inStage }) => ({
      stage,
      entered,
      inStage: measureDocument(inStage),
    })),
  };
}
