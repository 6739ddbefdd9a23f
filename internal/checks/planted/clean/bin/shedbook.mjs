import { run } from '@shedbook/cli';
import '@shedbook/server';

run();
