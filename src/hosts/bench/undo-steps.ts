/** The grid's record of what was done, as far as it is steered here. */
export interface GridHistory {
  revisions: { tree: Tree };
  processedRevisions: Set<string>;
  isFullySynchronized(): boolean;
  on(event: string, owner: object, heard: (event: { id: string; revisionId: string }) => void): void;
}

/** Each branch goes on where the one before it has an operation that was taken back. */
interface Tree {
  branches: Branch[];
  branchingOperationIds: Map<Branch, string>;
}

interface Branch {
  operations: { id: string }[];
}

/** Steps that the grid offers to take back. */
const STEPS = 99;
/** The record is cut once per so many steps. */
const EVERY = 100;

/**
 * The grid records every step for other people who may still be behind, and keeps all of them, so
 * that a page grows by a megabyte for a thousand edits. On the bench nobody is behind: what can no
 * longer be taken back is let go.
 */
export function forgetOldSteps(history: GridHistory, every = EVERY): void {
  let done: string[] = [];
  let since = 0;
  history.on("revision-undone", history, ({ revisionId }) => {
    done = done.filter((id) => id !== revisionId);
  });
  history.on("revision-redone", history, ({ revisionId }) => void done.push(revisionId));
  // A new step: from here on nothing can be done again that was taken back.
  history.on("new-local-state-update", history, ({ id }) => {
    done = [...done, id].slice(-STEPS);
    since++;
    if (since < every || !history.isFullySynchronized()) return;
    since = 0;
    cut(history.revisions.tree, done[0]!);
    history.processedRevisions.clear();
  });
}

/** Lets go of what came before a step. One operation stays in front of it: the grid goes back to that one when it takes the step back. */
function cut(tree: Tree, oldest: string): void {
  for (;;) {
    const [first, second] = tree.branches as [Branch, Branch?];
    const at = placeOf(first, oldest);
    const goesOnAt = placeOf(first, tree.branchingOperationIds.get(first));
    const isInFirst = !second || goesOnAt < 0 || at <= goesOnAt;
    if (isInFirst || placeOf(second, oldest) < 1) {
      first.operations = first.operations.slice(Math.max((isInFirst ? at : goesOnAt) - 1, 0));
      return;
    }
    tree.branches.shift();
    tree.branchingOperationIds.delete(first);
  }
}

const placeOf = ({ operations }: Branch, wanted: string | undefined): number => operations.findIndex(({ id }) => id === wanted);
