import { expect, it } from 'vitest';

function look(value: number): number {
  return value;
}

it('[AA1] runs', () => {
  look(2);
});
