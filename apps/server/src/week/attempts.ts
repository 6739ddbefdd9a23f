/** Counting attempts: whoever failed too often in a while has to wait, so that nobody finds a secret by trying. */

/** How often one may fail, and within which time. */
export interface AttemptLimits {
  /** How many failures. */
  readonly most: number;
  readonly withinMs: number;
}

/** What keeps count. */
export interface Attempts {
  /** Seconds that somebody has to wait before the next attempt; 0 where they need not. */
  waitSeconds(who: string): number;
  failed(who: string): void;
  /** Forgets the failures of somebody who got it right. */
  forgive(who: string): void;
}

/** Everybody who is remembered at once; beyond, the one who failed longest ago is forgotten. */
const MOST_REMEMBERED = 10_000;

/** Keeps count. @param clock gives milliseconds that never go back */
export function countAttempts({ most, withinMs }: AttemptLimits, clock: () => number): Attempts {
  const failures = new Map<string, readonly number[]>();
  const recent = (who: string) => (failures.get(who) ?? []).filter((at) => at > clock() - withinMs);
  return {
    waitSeconds: (who) => {
      const [first, ...others] = recent(who).slice(-most);
      if (first === undefined || others.length < most - 1) return 0;
      return Math.ceil((first + withinMs - clock()) / 1000);
    },
    failed: (who) => {
      const all = [...recent(who), clock()];
      failures.delete(who);
      failures.set(who, all);
      const [eldest] = failures.keys();
      if (failures.size > MOST_REMEMBERED && eldest !== undefined) failures.delete(eldest);
    },
    forgive: (who) => void failures.delete(who),
  };
}
