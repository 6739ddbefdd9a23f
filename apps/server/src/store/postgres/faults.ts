/**
 * What stands in the way of a store in PostgreSQL, in words; no secret of its address is in them.
 *
 * Source: PostgreSQL 15 documentation, appendix A "PostgreSQL Error Codes"; POSIX.1-2017, `connect`.
 */
import { InputError } from '@shedbook/host';
import { isAway, isDamage, isFull } from '../damaged.ts';
import { STORE_SETTING } from '../place.ts';

/** Where a database is, without its secret. */
interface Whereabouts {
  /** Computer or folder of its socket. */
  readonly where: string;
  readonly database: string;
  readonly user: string;
}

/** Takes an address apart; null where it is none of PostgreSQL. */
function partsOf(address: string): Whereabouts | null {
  if (!/^postgres(?:ql)?:\/\//.test(address) || !URL.canParse(address)) return null;
  const url = new URL(address);
  const host = url.searchParams.get('host') ?? decodeURIComponent(url.hostname);
  const user = url.searchParams.get('user') ?? decodeURIComponent(url.username);
  const own = user || (process.env['PGUSER'] ?? process.env['USER'] ?? '');
  return {
    where: `${host || 'localhost'}${url.port === '' ? '' : `:${url.port}`}`,
    user: own,
    database: decodeURIComponent(url.pathname.slice(1)) || own,
  };
}

/** Where a database is, to be told. */
export function shownAddress(address: string): string {
  const parts = partsOf(address);
  return parts ? `postgres://${parts.where}/${parts.database}` : 'PostgreSQL';
}

/** The same address. @throws InputError where it is none of PostgreSQL */
export function checkedAddress(address: string): string {
  if (partsOf(address)) return address;
  throw new InputError(({ words }) => words.store.postgres.noAddress({ setting: STORE_SETTING }));
}

function codeOf(error: unknown): string {
  const { code } = (error ?? {}) as { readonly code?: unknown };
  return typeof code === 'string' ? code : '';
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : '';
}

/** What is wrong, as an InputError; the error itself where it is another. */
export function postgresFault(error: unknown, address: string): unknown {
  const parts = partsOf(address);
  if (error instanceof InputError || !parts) return error;
  const code = codeOf(error);
  const say = (fault: 'noEntry' | 'noDatabase' | 'notWritable' | 'full' | 'damaged') =>
    new InputError(({ words }) => words.store.postgres[fault]({ ...parts }));
  if (/^28/.test(code) || /^SASL/.test(messageOf(error))) return say('noEntry');
  if (code === '3D000') return say('noDatabase');
  if (/^(?:25006|42501|3F000)$/.test(code)) return say('notWritable');
  if (isFull(error)) return say('full');
  if (isDamage(error)) return say('damaged');
  if (!isAway(error)) return error;
  const reason = code || 'ETIMEDOUT';
  return new InputError(({ words }) =>
    words.store.postgres.away({ where: parts.where, reason, setting: STORE_SETTING }),
  );
}
