using System.Globalization;
using SheetGen.Drawing.Details;
using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sections;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Elevation;

/// <summary>A detail of the set with its number and the sheet on which it stands.</summary>
public sealed record NumberedDetail(DetailView Detail, int Number, string Sheet);

/// <summary>
/// Bubbles in an elevation that lead to the details of what they stand at: openings, corners, the ends of the wall, the outlet of a drainage strip, the
/// joint between lifts. A detail without room for its bubble is named among the notes.
/// </summary>
public sealed class DetailCallouts(ElevationView view, IReadOnlyList<NumberedDetail> details)
{
    private static readonly double[] Distances = [3, 6, 9, 13, 17, 22, 28, 35, 43, 52, 62];

    private const int Directions = 16;

    private readonly Wall _wall = view.Wall;
    private readonly SheetWindow _window = view.Window;

    private Crowd Crowd => view.Labels.Placer.Crowd;

    /// <returns>What lies in paper coordinates.</returns>
    public IReadOnlyList<Primitive> Draw()
    {
        var drawn = new List<Primitive>();
        foreach ((NumberedDetail detail, Point2[] places, double toward) in Wanted())
        {
            if (places.Select(p => Bubble(detail, p, toward)).OfType<Primitive[]>().FirstOrDefault() is Primitive[] bubble)
                drawn.AddRange(bubble);
            else
                view.Labels.Note(view.Context.Say(Phrase.DetailNote, detail.Number.ToString(CultureInfo.InvariantCulture), detail.Sheet, detail.Detail.Title));
        }
        return drawn;
    }

    /// <summary>Details with the places of the view at which one bubble of each may stand, the best-liked first, and the direction liked best.</summary>
    private IEnumerable<(NumberedDetail Detail, Point2[] Places, double Toward)> Wanted()
    {
        const double Up = Math.PI / 2, Down = -Math.PI / 2;
        foreach (Opening opening in _wall.Openings.Where(o => _window.Has((o.Start + o.End) / 2)))
        {
            Point2[] corners = [.. new[] { (opening.End, opening.Bottom), (opening.Start, opening.Bottom), (opening.End, opening.Top), (opening.Start, opening.Top) }.Select(c => view.At(c.Item1, c.Item2))];
            foreach (NumberedDetail detail in Of(DetailKind.Opening, opening))
                yield return (detail, corners, Down);
        }
        foreach (Corner corner in _wall.LayoutLine.Corners.Where(c => c.Along > _wall.Start && c.Along < _wall.End && _window.Has(c.Along)))
        {
            foreach (NumberedDetail detail in Of(DetailKind.Corner, corner))
                yield return (detail, [view.At(corner.Along, _wall.Bottom.At(corner.Along))], Down);
        }
        foreach (bool isBegin in new[] { true, false }.Where(b => b ? !_window.Before : !_window.After))
        {
            (double along, double top, double bottom) = isBegin
                ? (_wall.Start, _wall.Top.At(_wall.Start), _wall.Bottom.At(_wall.Start)) : (_wall.End, _wall.Top.Before(_wall.End), _wall.Bottom.Before(_wall.End));
            foreach (NumberedDetail detail in details.Where(d => d.Detail.Subjects.OfType<WallEnd>().Any(e => e.Wall == _wall && e.IsBegin == isBegin)))
                yield return (detail, [view.At(along, bottom), view.At(along, top)], isBegin == view.Sign > 0 ? Math.PI : 0);
        }
        double[] strips = [.. ElevationModel.DrainageAlongs(view.Context, _wall).Where(_window.Has).OrderBy(a => Math.Abs(a - (_window.Start + _window.End) / 2))];
        foreach (NumberedDetail detail in strips.Length > 0 ? Of(DetailKind.Outlet, _wall) : [])
            yield return (detail, [.. strips.Select(a => view.At(a, _wall.Bottom.At(a)))], Down);
        foreach (NumberedDetail detail in Of(DetailKind.Joint, _wall))
            yield return (detail, [.. Joints()], Up);
    }

    private IEnumerable<NumberedDetail> Of(DetailKind kind, object subject) => details.Where(d => d.Detail.Kind == kind && d.Detail.Subjects.Contains(subject));

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

    /// <summary>A bubble in the nearest free place, with a leader to what it names; null where there is none.</summary>
    private Primitive[]? Bubble(NumberedDetail detail, Point2 at, double toward)
    {
        double radius = SectionBubble.Radius(view.Context);
        foreach (double distance in Distances)
        {
            foreach (double turn in Enumerable.Range(0, Directions).Select(i => (i % 2 == 0 ? 1 : -1) * ((i + 1) / 2) * 2 * Math.PI / Directions))
            {
                Point2 way = new Point2(1, 0).Turned(toward + turn), middle = at + way * (distance + radius), edge = middle - way * radius;
                Box box = Box.At(middle, 2 * radius, 2 * radius).Grown(0.5);
                if (!view.Labels.Placer.Frame.Contains(box) || !Crowd.IsFree(box) || !Crowd.IsLeaderFree(edge, at + way * 0.4, at) || Crowd.RunsAlong(at, edge, 0.8))
                    continue;
                Crowd.Add(box);
                Crowd.Add(at, edge, LineKind.Leader);
                return [Leader.OnPaper(at, edge), .. SectionBubble.Draw(view.Context, middle, radius, detail.Number.ToString(CultureInfo.InvariantCulture), detail.Sheet)];
            }
        }
        return null;
    }
}
