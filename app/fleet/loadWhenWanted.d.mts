export declare function loadWhenWanted(): void;
