/** Half a number. */
export declare function half(value: number): number;
