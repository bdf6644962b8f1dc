using SheetGen.Drawing.Details;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Elevation;

/// <summary>
/// Bubbles in an elevation that lead to the details of what they stand at: openings, corners, the ends of the wall, the outlet of a drainage strip, the
/// joint between lifts. A detail without room for its bubble is named among the notes.
/// </summary>
public sealed class DetailCallouts(ElevationView view, IReadOnlyList<DetailPlace> details)
{
    private readonly Wall _wall = view.Wall;
    private readonly SheetWindow _window = view.Window;

    /// <summary>Writes the bubbles, after all other words.</summary>
    public void Write()
    {
        foreach ((DetailPlace detail, Point2[] places, double toward) in Wanted())
        {
            if (!Bubble.TryPoint(view.Context, view.Labels, places, toward, detail.Name, detail.Sheet))
                view.Labels.Note(view.Context.Say(Phrase.DetailNote, detail.Name, detail.Sheet, detail.Detail.Title));
        }
    }

    /// <summary>Details with the places of the view at which one bubble of each may stand, the best-liked first, and the direction liked best.</summary>
    private IEnumerable<(DetailPlace Detail, Point2[] Places, double Toward)> Wanted()
    {
        const double Up = Math.PI / 2, Down = -Math.PI / 2;
        foreach (Opening opening in _wall.Openings.Where(o => _window.Has((o.Start + o.End) / 2)))
        {
            Point2[] corners = [.. new[] { (opening.End, opening.Bottom), (opening.Start, opening.Bottom), (opening.End, opening.Top), (opening.Start, opening.Top) }.Select(c => view.At(c.Item1, c.Item2))];
            foreach (DetailPlace detail in Of(DetailKind.Opening, opening))
                yield return (detail, corners, Down);
        }
        foreach (Corner corner in _wall.LayoutLine.Corners.Where(c => c.Along > _wall.Start && c.Along < _wall.End && _window.Has(c.Along)))
        {
            foreach (DetailPlace detail in Of(DetailKind.Corner, corner))
                yield return (detail, [view.At(corner.Along, _wall.Bottom.At(corner.Along))], Down);
        }
        foreach (bool isBegin in new[] { true, false }.Where(b => b ? !_window.Before : !_window.After))
        {
            (double along, double top, double bottom) = isBegin
                ? (_wall.Start, _wall.Top.At(_wall.Start), _wall.Bottom.At(_wall.Start)) : (_wall.End, _wall.Top.Before(_wall.End), _wall.Bottom.Before(_wall.End));
            foreach (DetailPlace detail in details.Where(d => d.Detail.Subjects.OfType<WallEnd>().Any(e => e.Wall == _wall && e.IsBegin == isBegin)))
                yield return (detail, [view.At(along, bottom), view.At(along, top)], isBegin == view.Sign > 0 ? Math.PI : 0);
        }
        double[] strips = [.. ElevationModel.DrainageAlongs(view.Context, _wall).Where(_window.Has).OrderBy(a => Math.Abs(a - (_window.Start + _window.End) / 2))];
        foreach (DetailPlace detail in strips.Length > 0 ? Of(DetailKind.Outlet, _wall) : [])
            yield return (detail, [.. strips.Select(a => view.At(a, _wall.Bottom.At(a)))], Down);
        foreach (DetailPlace detail in Of(DetailKind.Joint, _wall))
            yield return (detail, [.. Joints()], Up);
    }

    private IEnumerable<DetailPlace> Of(DetailKind kind, object subject) => details.Where(d => d.Detail.Kind == kind && d.Detail.Subjects.Contains(subject));

    /// <summary>Where joints between lifts meet the ends of the wall that the view shows.</summary>
    private IEnumerable<Point2> Joints()
    {
        foreach (ExcavationLift lift in view.Context.Quantities.Lifts.Where(l => l.Wall == _wall && l.LowerEdge.Count > 0).OrderBy(l => l.Number))
        {
            foreach (ProfilePoint end in new[] { lift.LowerEdge[0], lift.LowerEdge[^1] })
            {
                bool isEnd = (!_window.Before && Math.Abs(end.Along - _wall.Start) < 1e-3) || (!_window.After && Math.Abs(end.Along - _wall.End) < 1e-3);
                if (isEnd && end.Elevation > _wall.Bottom.At(end.Along) + 1e-6)
                    yield return view.At(end.Along, end.Elevation);
            }
        }
    }
}
