/** Half a number. */
export declare function half(value: number): number;
/** Twice a number. */
export declare function twice(value: number): number;
