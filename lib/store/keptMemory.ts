/**
 * Has the native engine keep memory that it frees, for the next table to take, where by itself it gives it back to the system within a
 * second and takes no part of a stretch that is much larger than what it wants: taken anew, a page costs several times what is
 * written to it, and filling a table took five times as long. One arena, since what one thread frees is else not taken by the next.
 *
 * The engine reads this once, when it is loaded: imported before it. What is already set holds. A minute is longer than any part of a
 * batch lasts and short enough for what stays open.
 *
 * Source: jemalloc 5, options narenas, lg_extent_max_active_fit (63: however large), dirty_decay_ms, muzzy_decay_ms.
 */
process.env.DUCKDB_JE_MALLOC_CONF ??=
  'narenas:1,lg_extent_max_active_fit:63,dirty_decay_ms:60000,muzzy_decay_ms:0';
