import { expect, it } from 'vitest';
import { readRefusal, refusal } from './refusal.ts';
import { addressOf, type Route, route } from './route.ts';
import { ROUTE_NAMES, ROUTES } from './routes.ts';

it('[RO1] has a schema for every place of a path, and fills the places in', () => {
  for (const name of ROUTE_NAMES) {
    const { path, params }: Route = ROUTES[name];
    const places = [...path.matchAll(/:(\w+)/g)].map((match) => match[1]);
    expect(Object.keys(params.shape), name).toEqual(places);
  }
  // @ts-expect-error: the path has a place `id`, which has no schema
  route({ ...ROUTES.listLessons, path: '/api/lessons/:id' });
  expect(addressOf(ROUTES.readStep, { id: 'a', step: 3 })).toBe('/api/lessons/a/steps/3');
  // standard: RFC 3986, section 2.1: a slash inside a segment is percent-encoded
  expect(addressOf(ROUTES.readLesson, { id: 'a/b ü' })).toBe('/api/lessons/a%2Fb%20%C3%BC');
});

it('[RO1] answers at one address with one route', () => {
  const addresses = ROUTE_NAMES.map((name) => `${ROUTES[name].method} ${ROUTES[name].path}`);
  expect(new Set(addresses).size).toBe(addresses.length);
});

it('[RO2] reads a refusal only where its code and its values fit', () => {
  const places = [{ path: 'body.text', problem: 'invalid_type' }];
  const refused = refusal('bad-request', { places });
  expect(readRefusal(JSON.parse(JSON.stringify(refused)))).toEqual(refused);
  for (const other of [
    null,
    'no',
    {},
    { code: 'toString', values: {} },
    { code: 'bad-request' },
    { ...refused, values: {} },
  ])
    expect(readRefusal(other)).toBeNull();
});
