#!/usr/bin/env node
/**
 * The `shedbook` command. In a clone it joins the apps as they were compiled last; in the package, where the apps do
 * not lie apart, it starts what was bundled of them.
 */
import { existsSync } from 'node:fs';

const bundle = new URL('../dist/shedbook.js', import.meta.url);
const apart = new URL('./join.mjs', import.meta.url);
await import((existsSync(apart) ? apart : bundle).href);
