/**
 * Logs of three general trades, 1,000 lines each, in which redundant machines tell of each other in words of their own: the
 * forms of their lines and the wordings of their redundancy as public sources show them, all else (machines, addresses,
 * times) invented. Wordings marked so are from memory.
 */
import { type Random, seeded } from '../../samples/random.ts';

export interface PublicLog {
  readonly trade: string;
  /** Where such lines stand in public. */
  readonly source: string;
  readonly files: Readonly<Record<string, string>>;
  /** What the timeline must tell: `time half signal value`, the day's clock to the second. */
  readonly truth: readonly string[];
}

interface Line {
  readonly second: number;
  readonly host: string;
  readonly text: string;
}

const [begin, end] = [8 * 3600, 20 * 3600];
const clock = (second: number): string =>
  [second / 3600, (second / 60) % 60, second % 60]
    .map((n) => String(Math.floor(n)).padStart(2, '0'))
    .join(':');
const at = (text: string): number => {
  const [hour = 0, minute = 0, second = 0] = text.split(':').map(Number);
  return hour * 3600 + minute * 60 + second;
};
const told = (lines: readonly string[]): readonly Line[] =>
  lines.map((line) => {
    const [, when = '', host = '', text = ''] = /^(\S+) (\S+) (.*)$/.exec(line) ?? [];
    return { second: at(when), host, text };
  });

/** What is told, among so many lines of daily business that there are 1,000. */
function among(
  own: readonly Line[],
  daily: (random: Random) => readonly [string, string],
  seed: number,
): readonly Line[] {
  const random = seeded(seed);
  const others = Array.from({ length: 1000 - own.length }, () => {
    const [host, text] = daily(random);
    return { second: begin + Math.floor(random() * (end - begin)), host, text };
  });
  return [...own, ...others].sort((a, b) => a.second - b.second);
}

const pick = <T>(random: Random, list: readonly [T, ...T[]]): T =>
  list[Math.floor(random() * list.length)] ?? list[0];
const number = (random: Random, most: number): number => Math.floor(random() * most);

function routers(): PublicLog {
  const lines = told([
    '08:00:10 ro1-b (VI_1) Entering BACKUP STATE',
    '08:00:14 ro1-a (VI_1) Entering MASTER STATE',
    '09:30:12 ro1-b (VI_1) Receive advertisement timeout',
    '09:30:12 ro1-b (VI_1) Entering MASTER STATE',
    '09:31:05 ro1-a (VI_1) Entering BACKUP STATE',
    '15:02:40 ro1-b (VI_1) Entering BACKUP STATE',
    '15:02:43 ro1-a (VI_1) Entering MASTER STATE',
  ]);
  const daily = (random: Random): readonly [string, string] => {
    const address = `192.0.2.${number(random, 200)}`;
    const text = pick(random, [
      `Sending gratuitous ARP on eth0 for ${address}`,
      `(VI_1) Sending/queueing gratuitous ARPs on eth0 for ${address}`,
      '(VI_1) setting VIPs.',
    ]);
    return [pick(random, ['ro1-a', 'ro1-b']), text];
  };
  const text = among(lines, daily, 1).map(
    (l) =>
      `Mar 14 ${clock(l.second)} ${l.host} Keepalived_vrrp[${l.host === 'ro1-a' ? 1734 : 9545}]: ${l.text}\n`,
  );
  return {
    trade: 'routing daemon',
    source:
      'github.com/acassen/keepalived, issues 2190 (2022) and 2202 (2022): lines of VRRP instances in a syslog',
    files: { 'routers.log': text.join('') },
    truth: [
      '08:00:10 B role standby',
      '08:00:14 A role active',
      '09:30:12 B role active',
      '09:31:05 A role standby',
      '15:02:40 B role standby',
      '15:02:43 A role active',
    ],
  };
}

function fileServers(): PublicLog {
  const lines = told([
    '08:20:00 fs1-a drbd nfs/0 drbd1 fs1-b: pdsk( DUnknown -> UpToDate ) repl( Off -> Established )',
    '10:18:06 fs1-a drbd nfs fs1-b: PingAck did not arrive in time.',
    '10:18:06 fs1-a drbd nfs/0 drbd1 fs1-b: pdsk( UpToDate -> DUnknown ) repl( Established -> Off )',
    '10:24:31 fs1-a drbd nfs fs1-b: conn( Connecting -> Connected ) peer( Unknown -> Secondary )',
    '10:24:50 fs1-a drbd nfs/0 drbd1 fs1-b: pdsk( DUnknown -> UpToDate ) repl( Off -> Established )',
  ]);
  const daily = (random: Random): readonly [string, string] => {
    const id = 1_000_000 + number(random, 9_000_000);
    const text = pick(random, [
      `drbd nfs: Preparing cluster-wide state change ${id}: 1->all empty`,
      `drbd nfs: Committing cluster-wide state change ${id} (${number(random, 9)}ms)`,
      'drbd nfs/0 drbd1: Enabling local AL-updates',
    ]);
    return [pick(random, ['fs1-a', 'fs1-b']), text];
  };
  const text = among(lines, daily, 2).map((l) => `Feb 18 ${clock(l.second)} ${l.host} kernel: ${l.text}\n`);
  return {
    trade: 'file server',
    source:
      'github.com/LINBIT/drbd, issues 27 (2022) and 106: kernel lines of a replicated block device under a file server',
    files: { 'servers.log': text.join('') },
    truth: ['08:20:00 - partner-ready yes', '10:18:06 - partner-ready no', '10:24:50 - partner-ready yes'],
  };
}

function brokers(): PublicLog {
  const queue = "Mirrored queue 'orders' in vhost '/':";
  const [a, b] = ['rabbit@br1-a.1.271.0', 'rabbit@br1-b.1.1019.0'];
  const lines = told([
    `09:42:50 br1-b ${queue} Secondary replica of queue <${b}> detected replica <${a}> to be down`,
    `09:42:51 br1-b ${queue} Promoting mirror <${b}> to master`,
    `09:58:03 br1-b ${queue} Adding mirror on node 'rabbit@br1-a': <17907.990.0>`,
    `09:58:04 br1-b ${queue} Synchronising: 0 messages to synchronise`,
  ]);
  // From memory.
  const daily = (random: Random): readonly [string, string] => {
    const peer = `192.0.2.${number(random, 200)}:${40_000 + number(random, 9000)} -> 192.0.2.9:5672`;
    const id = `<0.${number(random, 9000)}.0>`;
    const text = pick(random, [
      `accepting AMQP connection ${id} (${peer})`,
      `closing AMQP connection ${id} (${peer})`,
      `connection ${id} (${peer}): user 'plant' authenticated and granted access to vhost '/'`,
    ]);
    return ['br1-b', text];
  };
  const random = seeded(4);
  const text = among(lines, daily, 3).map(
    (l) =>
      `2026-07-01 ${clock(l.second)}.${String(number(random, 1000)).padStart(3, '0')} [info] <0.${number(random, 9000)}.0> ${l.text}\n`,
  );
  return {
    trade: 'message broker',
    source:
      'github.com/rabbitmq/cluster-operator, issue 753 (2021): the log of a node whose mirrored queues move',
    files: { 'br1-b.log': text.join('') },
    truth: [
      '09:42:50 - partner-ready no',
      // What the other half is, is concluded.
      '09:42:51 A role standby',
      '09:42:51 B role active',
      '09:58:03 - partner-present yes',
      '09:58:04 B sync-start',
    ],
  };
}

export const publicLogs: readonly PublicLog[] = [routers(), fileServers(), brokers()];
