#!/usr/bin/env node
/** The `shedbook` command: the compiled program, started. */
import '../dist/main.js';
