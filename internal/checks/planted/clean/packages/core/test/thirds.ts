export const thirds = 1;
