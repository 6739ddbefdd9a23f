import { expect, it } from 'vitest';

it('[AA1] runs', () => {
  new EventTarget().addEventListener('x', () => expect(1).toBe(1));
});
