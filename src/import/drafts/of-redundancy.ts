/** Words that speak of redundancy; common practice, no source. */
const ofRedundancy =
  /(?<!\p{L})(?:re|un|de)?(?:role|sync|partner|peer|mate\b|standby|stby|activ|primary|secondary|backup|master|slave|lost|loss|los[ei]|ready|switch|swap|fail|takeover|take over|restart|reboot|reset|redundan|heartbeat|elect|promot|demot|firmware|(?:re)?flash)/iu;

/** Whether a wording holds a word of redundancy, also within a name such as `partnerLost`. */
export function isOfRedundancy(text: string): boolean {
  return ofRedundancy.test(text.replace(/([a-z])([A-Z])|_/g, '$1 $2'));
}
