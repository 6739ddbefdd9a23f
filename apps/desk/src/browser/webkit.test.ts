import { expect, it } from 'vitest';
import { beginDesk } from '../../../../internal/testing/engines/desk-story.ts';
import { WEBKIT } from '../../../../internal/testing/engines/webkit.ts';

it('[ST3704] [ST3703] plays, with ball and count, and stays on its paper in WebKit', async () => {
  await expect(beginDesk(WEBKIT)).resolves.toBeUndefined();
});
