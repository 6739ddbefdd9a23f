export const halves = 2;
