using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Layout.Placing;

/// <summary>
/// The designer's pins: a pinned nail stands where and as stated, whatever it hits; the others keep away from it. A pin of a row's
/// length alone pins nothing else.
/// </summary>
public static class Pins
{
    public static void Apply(
        WallProject project, RowHeads row, RowNumber number, IReadOnlyList<HeadChoice>[] choices)
    {
        Bay bay = row.Bay;
        foreach (FixedNail pin in project.FixedNails)
        {
            if (pin.Wall != bay.Wall.Name || (pin.Section is not null && pin.Section != bay.Section.Name) || (pin.Row != number.ToString() && pin.Row != number.Name))
                continue;
            if (pin is { Along: null, Splay: null, Inclination: null, Length: { } length })
            {
                for (int label = 0; label < choices.Length; label++)
                    choices[label] = [.. choices[label].Select(c => c.WithLength(bay.Face, length))];
            }
            else if (pin.Along is not { } along)
            {
                for (int label = 0; label < choices.Length; label++)
                    choices[label] = [Pinned(project, row, choices[label][0], row.Places[label], pin)];
            }
            else if (along >= bay.Start && along <= bay.End && bay.Leg.Has(along) && choices.Length > 0)
            {
                int label = Nearest(row.Places, along);
                double place = bay.Rounded(along);
                choices[label] = [Pinned(project, row, choices[label][0], place, pin)];
            }
        }
    }

    private static HeadChoice Pinned(WallProject project, RowHeads row, HeadChoice before, double along, FixedNail pin)
    {
        Section section = row.Bay.Section;
        double inclination = pin.Inclination ?? section.Inclination;
        Turning turning = Turnings.Make(section, project.Rules.Redirect, pin.Splay ?? 0, inclination, inclination - section.Inclination);
        double shift = Math.Round(along - row.Places[before.Label], 9);
        return new HeadChoice(row.Bay.Face, row.HeadAt(along), before.Label, shift, Turnings.Only(turning), true, pin.Length ?? before.PinnedLength);
    }

    private static int Nearest(List<double> places, double along)
    {
        int best = 0;
        for (int i = 1; i < places.Count; i++)
        {
            if (Math.Abs(places[i] - along) < Math.Abs(places[best] - along))
                best = i;
        }
        return best;
    }
}
