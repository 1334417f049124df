export declare const firstViewNames: { readonly lastPicture: string; readonly fleetShown: string };
export declare function fillFirstView(names: typeof firstViewNames): void;
