export * from 'node:path';
