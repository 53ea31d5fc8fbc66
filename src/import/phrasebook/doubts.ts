import { isHappening, type Signal } from '../../vocabulary.ts';

/** What is told of is none: it was planned, refused, or played. Common practice, no source. */
const unreal =
  /\b(?:planned|scheduled|expected|requested|postponed|cancell?ed|refused|inhibited|denied|simulat(?:ed|ion|or)|training|rehearsal|exercise|drill)\b|\b(?:in|for|during|by|as|under)\s+(?:an?\s+|the\s+)?test\b|\b(?:tomorrow|on demand|next (?:shutdown|start(?:up)?|restart|week|shift|time|cycle)|(?:if|when|as) (?:needed|required))\b/i;
/** "partner ready in 20 s": it is to be so. */
const soon = /\b(?:ready|present|switch-?over|restart|removal|insertion)\s+in\s+\d/i;
/** "removed at 10:00", "ready from 10:00 to 10:05": of another instant than that of its row, which its words do not compare. */
const atOther = /\b(?:at|from|between)\s+\d{1,2}[:.h]\d{2}/i;
const past = /\b(?:ago|earlier|yesterday|previously)\b/i;
/** "restart of the HMI", whose it is stands behind it. */
const ofAnother =
  /\brestart\s+of\s+(?!(?:the\s+)?(?:module|controller|processor|standby|stby|sby|active|half|slot|unit|node|side|pair)\b|[A-Za-z_]*\d|[A-Z]\b)/i;
/** "removed from the list", where nothing before says what was removed. */
const elsewhere =
  /^(?!.*\b(?:module|controller|card|standby|stby|sby|half|slot|unit|partner)\b.*(?:remov|insert)).*\b(?:removed|removal|inserted|insertion)\s+(?:from|in|into|to|on)\s+(?!(?:the\s+)?(?:module|controller|standby|half|slot|place|position|rack|chassis|cabinet|backplane|unit|node|side|pair)\b|[A-Za-z_]*\d|[A-Z]\b)/i;

/** "switchover to B failed": where no reason follows, its last word says how it ended. Common practice, no source. */
const unfinished =
  /\b(?:failed|unsuccessful|inhibited|aborted|refused|rejected|denied|blocked|disabled|pending|ongoing|in progress|under way|with (?:errors?|faults?)|without success|not \w+)\W*$/i;
const reason = /\b(?:due\s+to|because|after|since|for)\b/i;

/** What is longer is no sentence of a person. Chosen here: all of it is looked at more than once. */
const longest = 500;

/** Whether words tell of another instant than the one at which they were written. */
export function isOfAnotherTime(text: string): boolean {
  return atOther.test(text) || past.test(text);
}

/** Whether plain words that a rule of plain English fits may tell of something else, or of what is not so. */
export function isDoubtful(signal: Signal, message: string): boolean {
  const text = message.slice(0, longest);
  if (signal === 'fault' || signal === 'sync-failed') return false;
  if (unreal.test(text) || soon.test(text) || isOfAnotherTime(text)) return true;
  const [told = ''] = text.split(reason);
  if (isHappening(signal) && unfinished.test(told)) return true;
  if (signal === 'restart') return ofAnother.test(text);
  return (signal === 'removed' || signal === 'inserted') && elsewhere.test(text);
}
