/** What stands in the page beside the modules: their exports, and the lists of data/scales.js, an exercise's uses,
    and what drawings show. */
declare var strengthHandbook: {
  lists: import('../../plugins/strength_handbook/theme/assets/strength-handbook/types.js').Lists;
  figures?: Record<string, string>;
  uses?: Record<string, import('../../plugins/strength_handbook/theme/assets/strength-handbook/types.js').UseData>;
};
