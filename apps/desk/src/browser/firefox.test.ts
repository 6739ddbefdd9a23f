import { expect, it } from 'vitest';
import { beginDesk } from '../../../../internal/testing/engines/desk-story.ts';
import { FIREFOX } from '../../../../internal/testing/engines/firefox.ts';

it('[ST3704] [ST3703] plays, with ball and count, and stays on its paper in Firefox', async () => {
  await expect(beginDesk(FIREFOX)).resolves.toBeUndefined();
});
