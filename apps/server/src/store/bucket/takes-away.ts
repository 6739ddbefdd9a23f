/** What stands in the way of recordings in a bucket, in words; no secret is in them. */
import { AwayError } from '../damaged.ts';
import { TAKES_SETTING } from '../place.ts';

/** What can be wrong with a bucket: it does not answer or says something else, or what it is named by is none. */
export type BucketFault =
  | 'noAddress'
  | 'noKeys'
  | 'away'
  | 'noEntry'
  | 'noBucket'
  | 'keepsErased'
  | 'another';

/** Recordings cannot be reached where they are kept. */
export class TakesAwayError extends AwayError {
  /** @param where address, without a secret @param reason what the store said, or the system */
  constructor(fault: BucketFault, where: string, reason: string) {
    const said = { where, reason, setting: TAKES_SETTING };
    super(({ words }) => words.store.bucket[fault]({ ...said }));
  }
}
