import { ROUTE_NAMES } from '@shedbook/routes';
import { expect, it } from 'vitest';
import { allHandlers, type HandlerParts } from './all-handlers.ts';
import type { Handlers } from './handlers.ts';

it('[RO3] answers every route of the table and compiles with none left out', () => {
  // nothing is asked of the parts until a route is
  const handlers = allHandlers({} as HandlerParts);
  const whole: Handlers = handlers;
  expect(Object.keys(whole).toSorted()).toEqual(ROUTE_NAMES.toSorted());
  const { readPages, ...lacking } = handlers;
  // @ts-expect-error: readPages is not answered
  const refused: Handlers = lacking;
  expect(refused).not.toHaveProperty(readPages.name);
});
