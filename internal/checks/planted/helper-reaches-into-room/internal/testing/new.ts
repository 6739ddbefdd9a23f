import '../../packages/core/src/rhythm/fraction.ts';
