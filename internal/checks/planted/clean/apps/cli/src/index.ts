import { twoThirds } from '@shedbook/core';

/** Runs the command. */
export const run = (): void => console.log(twoThirds(), Date.now(), Math.random());
