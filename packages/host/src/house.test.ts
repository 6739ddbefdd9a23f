import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { houseOf } from './house.ts';

it('[HO1] finds the nearest manifest of its own and passes by those of others', () => {
  const root = mkdtempSync(join(tmpdir(), 'shedbook-house-'));
  onTestFinished(() => rmSync(root, { recursive: true }));
  const house = join(root, 'shedbook');
  const room = join(house, 'packages/room');
  mkdirSync(join(room, 'dist'), { recursive: true });
  writeFileSync(join(house, 'package.json'), '{ "name": "shedbook" }');
  writeFileSync(join(room, 'package.json'), '{ "name": "@shedbook/room" }');
  // definition: the folder that holds the manifest named shedbook
  expect(houseOf(join(room, 'dist'))).toBe(house);
  expect(() => houseOf(root)).toThrow(/no manifest of Shedbook/);
});
