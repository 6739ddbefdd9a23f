import { expect, it } from 'vitest';
import { beginPractice } from '../../../../internal/testing/engines/practice-story.ts';
import { WEBKIT } from '../../../../internal/testing/engines/webkit.ts';

it('[ST1000] plays, with ball and count, in WebKit', async () => {
  await expect(beginPractice(WEBKIT)).resolves.toBeUndefined();
});
