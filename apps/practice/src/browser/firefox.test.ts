import { expect, it } from 'vitest';
import { FIREFOX } from '../../../../internal/testing/engines/firefox.ts';
import { beginPractice } from '../../../../internal/testing/engines/practice-story.ts';

it('[ST1000] plays, with ball and count, in Firefox', async () => {
  await expect(beginPractice(FIREFOX)).resolves.toBeUndefined();
});
