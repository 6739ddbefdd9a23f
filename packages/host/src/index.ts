export { DEMO_DIR, DESK_DIR, houseOf, PRACTICE_DIR } from './house.ts';
