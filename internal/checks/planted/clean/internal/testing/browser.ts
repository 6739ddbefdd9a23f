import '@shedbook/server';
import { twoThirds } from '@shedbook/core';

export const lesson = twoThirds;
