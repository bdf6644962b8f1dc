using SheetGen.Drawing.Labels;
using SheetGen.Drawing.Plan;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Elevation;

/// <summary>Writes the labels of the wall itself: stations, top, bottom, sections, ground, corners, borings, obstructions.</summary>
public sealed class ElevationLabels(ElevationView view)
{
    private readonly Printed _print = view.Context.Print;
    private readonly Wall _wall = view.Wall;
    private readonly SheetWindow _window = view.Window;

    private bool IsMetric => _print.Unit == LengthUnit.Metre;

    private double Height => view.Context.StyleOf(TextRole.Label).Height;

    /// <summary>Station axis along the bottom of the view.</summary>
    public void Axis()
    {
        double y = view.Viewport.Frame.Bottom + 7;
        view.Labels.Add(new Line(LayerRole.Axis, new(view.LeftEdge, y), new(view.RightEdge, y)));
        double fine = IsMetric ? 1 : 5;
        double unitsPerMm = view.Viewport.UnitsPerMillimetre;
        double coarse = fine * 2;
        while (coarse / unitsPerMm < 16)
            coarse *= coarse / fine % 4 == 2 ? 2.5 : 2;
        foreach (double along in _wall.LayoutLine.Stationing.RoundPlaces(_window.Start, _window.End, fine))
        {
            bool labelled = Math.Abs(Math.IEEERemainder(_wall.LayoutLine.Stationing.Printed(along).Number, coarse)) < 1e-6;
            double x = view.At(along, 0).X;
            view.Labels.Add(new Line(LayerRole.Axis, new(x, y), new(x, y + (labelled ? 2 : 1))));
            if (labelled)
                view.Labels.TryWrite(view.Context.Write(LayerRole.Label, TextRole.Label, new(x, y - 1 - Height), _print.ShortStation(_wall, along), HorizontalAlign.Center));
        }
        view.Labels.Placer.Crowd.Add(new Box(view.LeftEdge, y - 0.2, view.RightEdge, y + 2.2));
    }

    private string Say(Phrase phrase, params ReadOnlySpan<string> values) => view.Context.Say(phrase, values);

    private string Station(double along) => Say(Phrase.Station, _print.Station(_wall, along));

    /// <summary>Elevations of the top at its breaks, its ends and a regular interval.</summary>
    public void Top()
    {
        double interval = IsMetric ? 10 : 25;
        var places = new SortedSet<double>(ElevationModel.Pieces(_wall.Top, _window.Start, _window.End).Select(p => p.Along));
        foreach (double along in _wall.LayoutLine.Stationing.RoundPlaces(_window.Start, _window.End, interval))
        {
            if (!places.Any(p => Math.Abs(p - along) < interval / 4))
                places.Add(along);
        }
        foreach (double along in places)
        {
            double before = _wall.Top.Before(along), at = along >= _window.End ? before : _wall.Top.At(along);
            TopLabel(along, at);
            if (Math.Abs(before - at) > 1e-6 && along > _window.Start)
                TopLabel(along, before);
        }
    }

    private void TopLabel(double along, double elevation) =>
        view.Labels.Label(new LabelRequest([[Say(Phrase.TopElevation, _print.Elevation(elevation))]], TextRole.Label, view.At(along, elevation), 0.4)
        {
            Note = Say(Phrase.TopElevation, _print.Elevation(elevation)) + ", " + Station(along),
            Upright = true,
            Toward = Math.PI / 2,
            LeaderFrom = 1,
        });

    /// <summary>Elevation and station of every step of the bottom.</summary>
    public void Bottom()
    {
        var steps = new SortedSet<double>(_wall.BottomSteps.Select(s => s.Along).Where(_window.Has)) { _window.Start };
        foreach (double along in steps)
        {
            double z = _wall.Bottom.At(along);
            string[] lines = [Say(Phrase.BottomElevation, _print.Elevation(z)), Station(along)];
            view.Labels.Label(new LabelRequest([lines, [string.Join(" ", lines)]], TextRole.Label, view.At(along, z), 0.4)
            {
                Note = string.Join(", ", lines),
                Toward = -Math.PI / 2 + view.Sign * 0.6,
                LeaderFrom = 1,
            });
        }
    }

    public void Ground()
    {
        GroundLabel(_wall.ExistingGround, Say(Phrase.ExistingGround), Math.PI / 2);
        GroundLabel(_wall.FinishedGrade, Say(Phrase.FinishedGrade), -Math.PI / 2);
        if (_wall.Drainage is not null)
        {
            double[] shown = [.. ElevationModel.DrainageAlongs(view.Context, _wall).Where(_window.Has)];
            if (shown.Length > 0)
            {
                double at = shown[shown.Length / 2];
                Named(Say(Phrase.DrainageStripTypical), view.At(at, _wall.Bottom.At(at)), -Math.PI / 2);
            }
        }
    }

    private void GroundLabel(Profile? profile, string name, double toward)
    {
        if (profile is null)
            return;
        double At(double share) => _window.Start + (_window.End - _window.Start) * share;
        view.Labels.LabelOneOf([.. new[] { 0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8 }.Select(s => Naming(name, view.At(At(s), profile.At(At(s))), toward, null))]);
    }

    private void Named(string name, Point2 at, double? toward, string? otherwise = null) =>
        view.Labels.Label(Naming(name, at, toward, null, otherwise));

    /// <param name="otherwise">What stands among the notes where there is no room at all; null for the name.</param>
    private static LabelRequest Naming(string name, Point2 at, double? toward, string? obstruction, string? otherwise = null) =>
        new([[name]], TextRole.Label, at, 0.3) { Toward = toward, Obstruction = obstruction, LeaderFrom = 1, Otherwise = otherwise ?? name };

    /// <summary>Openings with size and heights, and what the project closes to nails with its reason.</summary>
    public void OpeningsAndClosed()
    {
        foreach (Opening o in _wall.Openings.Where(o => _window.Has((o.Start + o.End) / 2)))
        {
            double width = Math.Abs(view.Strip.X(o.End) - view.Strip.X(o.Start));
            string[] words =
            [
                Say(Phrase.OpeningName, o.Name.ToUpperInvariant()),
                Say(Phrase.OpeningSizeAndHeights, _print.Short(width), _print.Short(o.Top - o.Bottom), _print.Elevation(o.Bottom), _print.Elevation(o.Top)),
                Say(Phrase.OpeningFraming),
            ];
            Spoken(words, view.At((o.Start + o.End) / 2, o.Top));
        }
        foreach (ClosedStretch c in _wall.ClosedStretches)
        {
            double from = Math.Max(c.Start, _window.Start), to = Math.Min(c.End, _window.End);
            if (to <= from)
                continue;
            double middle = (from + to) / 2;
            Spoken([Say(Phrase.NoNails), c.Reason.ToUpperInvariant()], view.At(middle, Math.Min(c.Top ?? double.MaxValue, _wall.Top.At(middle))));
        }
    }

    private void Spoken(string[] words, Point2 at) =>
        view.Labels.Label(new LabelRequest([words, [string.Join(", ", words)]], TextRole.Label, at, 0.3)
        {
            Toward = Math.PI / 2,
            LeaderFrom = 1,
            Note = string.Join(", ", words),
        });

    public void Corners()
    {
        foreach (Corner corner in _wall.LayoutLine.Corners.Where(c => c.Along > _wall.Start && c.Along < _wall.End && _window.Has(c.Along)))
        {
            bool outside = new Face(_wall).IsOutside(corner);
            string[] words =
            [
                Say(outside ? Phrase.OutsideCorner : Phrase.InsideCorner, _print.Angle(Math.Abs(Angles.ToDegrees(corner.Deflection)))),
                Station(corner.Along),
            ];
            view.Labels.Label(new LabelRequest([words], TextRole.Label, view.At(corner.Along, _wall.Top.At(corner.Along)), 0.4)
            {
                Toward = Math.PI / 2,
                LeaderFrom = 1,
                Otherwise = string.Join(", ", words),
            });
        }
    }

    public void Borings()
    {
        foreach (Boring boring in view.Context.Project.Borings)
        {
            double along = LayoutProjection.Locate(_wall.LayoutLine, boring.At).Along;
            if (along < _wall.Start || along > _wall.End || !_window.Has(along) || boring.Bottom > view.Strip.High)
                continue;
            string name = Say(Phrase.BoringName, boring.Name.ToUpperInvariant());
            Named(name, view.At(along, Math.Min(boring.Top, view.Strip.High)), Math.PI / 2, name + ", " + Station(along));
            double above = boring.Top;
            foreach (BoringLayer layer in boring.Layers)
            {
                double middle = (Math.Min(above, view.Strip.High) + Math.Max(layer.To, view.Strip.Low)) / 2;
                above = layer.To;
                if (middle <= view.Strip.Low || middle >= view.Strip.High)
                    continue;
                string plasticity = layer.PlasticityIndex is double pi ? Say(Phrase.PlasticityIndex, Printed.Number(pi, 1)) : "";
                string words = layer.Name.ToUpperInvariant() + plasticity;
                Named(words, view.At(along, middle), null, name + ": " + words);
            }
            if (boring.Water is double water && water > view.Strip.Low && water < view.Strip.High)
                Named(Say(Phrase.WaterElevation, _print.Elevation(water)), view.At(along, water), null, name + ": " + Say(Phrase.WaterElevation, _print.Elevation(water)));
        }
    }

    /// <summary>Names of what is seen through the wall.</summary>
    public void Obstructions()
    {
        foreach (Obstruction o in view.Context.Project.Obstructions.Where(o => ElevationObstructions.Shows(view.Context, view.Strip, o)))
        {
            double[] along = [.. view.Context.PlacesOf(_wall.LayoutLine, o).Select(p => p.Along)];
            double low = Math.Max(along.Min(), _window.Start), high = Math.Min(along.Max(), _window.End);
            if (low > high || (low == high && !_window.Has(low)))
                continue;
            string name = PlanLabels.NameOf(o, view.Context);
            view.Labels.LabelOneOf([.. Anchors(o, along, low, high).Select(a => Naming(name, a.At, a.Toward, o.Name, name + ", " + Station((low + high) / 2)))]);
        }
    }

    /// <summary>Places of an obstruction that its name may lead to: its top first; of a pipe any, of others their sides, too.</summary>
    private IEnumerable<(Point2 At, double? Toward)> Anchors(Obstruction o, double[] along, double low, double high)
    {
        double[] shares = [0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9];
        if (o.Kind == ObstructionKind.Pipe)
        {
            foreach (double at in shares.Select(s => low + (high - low) * s))
                yield return (view.At(at, PipeElevation(o, along, at)), Math.PI / 2);
            yield break;
        }
        double top = Math.Min(o.Top, view.Strip.High), bottom = Math.Max(o.Bottom, view.Strip.Low);
        foreach (double at in low == high ? [low] : shares.Select(s => low + (high - low) * s))
            yield return (view.At(at, top), Math.PI / 2);
        foreach (double share in shares)
            yield return (view.At((low + high) / 2, bottom + (top - bottom) * share), null);
    }

    private static double PipeElevation(Obstruction pipe, double[] along, double at)
    {
        for (int i = 0; i + 1 < along.Length; i++)
        {
            double a = along[i], b = along[i + 1];
            if (a != b && at >= Math.Min(a, b) && at <= Math.Max(a, b))
                return pipe.Shape[i].Z + (pipe.Shape[i + 1].Z - pipe.Shape[i].Z) * (at - a) / (b - a);
        }
        Vector3D only = pipe.Shape[0];
        return only.Z;
    }
}
