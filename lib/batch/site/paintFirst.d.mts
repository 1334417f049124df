export declare const firstPaintName: string;
export declare function paintFirst(root: string): void;
