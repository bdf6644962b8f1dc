namespace SheetGen.Layout.Placing;

/// <summary>Rows in conflict are solved again and again, paying more and more for running into each other.</summary>
public static class Negotiating
{
    public static void Run(LayoutState layout)
    {
        var terms = new Negotiation();
        for (terms.Round = 0; terms.Round < Negotiation.Rounds; terms.Round++)
        {
            int solved = 0;
            foreach (RowState state in layout.Rows)
            {
                var labels = new SortedSet<int>(state.Nails.Where(n => !n.Choice.IsPinned && layout.ConflictsOf(n).Count > 0).Select(n => n.Choice.Label));
                foreach ((int first, int last) in Troubles.Join(labels))
                {
                    if (StretchSolver.Solve(state, first, last, layout.Index, terms) is { } solution)
                        layout.Apply(solution);
                    solved++;
                }
            }
            if (solved == 0)
                return;
            foreach (Placed nail in layout.Rows.SelectMany(s => s.Nails).Where(n => layout.ConflictsOf(n).Count > 0))
                terms.Remember(nail);
        }
    }
}
