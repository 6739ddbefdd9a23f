/** Host. */
export const host = require('node:os').hostname;
