/** The grooves that a lesson starts from, loaded when one is asked for. */
export { starterText } from '@shedbook/core';
