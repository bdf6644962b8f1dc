using SheetGen.Layout.Rows;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Quantities.Effect;

/// <summary>The effect of the layout on one wall's nails, and what it takes to evaluate any other place of a nail.</summary>
internal sealed class WallEffect
{
    private readonly WallProject _project;
    private readonly Dictionary<Section, SectionStrength> _strengths = new(ReferenceEqualityComparer.Instance);
    private readonly Dictionary<int, LegCells> _drawn = [];
    private readonly Dictionary<string, double> _area, _gridArea;
    private readonly ILookup<(int Leg, Section Section, RowNumber Row), Nail> _rows;
    private readonly ILookup<(int Leg, Section Section, RowNumber Row), GridPlace> _gridRows;

    public WallEffect(WallProject project, Wall wall, NailLayout layout)
    {
        (_project, Wall, Face) = (project, wall, new Face(wall));
        Production = [.. layout.Nails.Where(n => n.Wall == wall && n.Kind != NailKind.Verification)];
        Grid = new GridPlaces(wall, layout, Production, project.Unit);
        Layers = new SoilLayers(project, wall);
        var regions = new FaceRegions(Face);
        string[] layers = [.. project.Borings.SelectMany(b => b.Layers).Select(l => l.Name).Concat([SoilLayers.Above, SoilLayers.Below]).Distinct()];
        foreach (Section section in wall.Sections)
            _strengths[section] = new SectionStrength(wall, section, regions.SlopeFactor(), Layers.IsEmpty ? [] : layers, project.Unit);
        foreach (Leg leg in Face.Legs)
            _drawn[leg.Index] = new LegCells(regions, leg, [.. Production.Where(n => LegOf(n) == leg.Index).Select(n => (n.Mark, Head.Of(n)))]);
        _area = _drawn.Values.SelectMany(c => c.Areas()).ToDictionary(a => a.Key, a => a.Area);
        _gridArea = HeadCells.Areas(regions, [.. Grid.All.Select(p => (p.Key, p.At))]);
        AreaWithoutNails = Face.Legs.Where(l => Production.All(n => LegOf(n) != l.Index)).Sum(l => _drawn[l.Index].FaceArea);
        _rows = Production.OrderBy(n => n.Along).ToLookup(n => (LegOf(n), n.Section, n.Row));
        _gridRows = Grid.All.OrderBy(p => p.At.Along).ToLookup(p => (p.Row.Leg, p.Row.Section, p.Row.Number));
    }

    public Wall Wall { get; }

    public Face Face { get; }

    public GridPlaces Grid { get; }

    public SoilLayers Layers { get; }

    public IReadOnlyList<Nail> Production { get; }

    public double AreaWithoutNails { get; }

    public IEnumerable<SectionStrength> Strengths => Wall.Sections.Select(s => _strengths[s]);

    public IEnumerable<SectionEffect> Sections => Strengths.Select(s => s.Effect);

    public SectionStrength StrengthOf(Section section) => _strengths[section];

    /// <summary>The cells of the nails as drawn, on the leg of a nail.</summary>
    public LegCells CellsAt(Nail nail) => _drawn[LegOf(nail)];

    public double GridArea(GridPlace place) => _gridArea[place.Key];

    /// <summary>The production nails of a nail's row on its leg, by place along the layout line.</summary>
    public IReadOnlyList<Nail> RowOf(Nail nail) => [.. _rows[(LegOf(nail), nail.Section, nail.Row)]];

    /// <summary>Every production nail at its grid place and as drawn.</summary>
    public IEnumerable<NailEffect> Nails()
    {
        var zones = new Zones(Face, Production);
        foreach (Nail nail in Production)
        {
            SectionStrength strength = _strengths[nail.Section];
            GridPlace? place = Grid.Of(nail);
            PlaceEffect drawn = Drawn(nail);
            PlaceEffect? grid = place is null ? null : OnGrid(nail, place);
            bool isSame = grid is not null && nail is { Splay: 0 } && nail.Inclination == nail.Section.Inclination && nail.Length == place!.Row.Length
                && place.At == Head.Of(nail) && EffectTakeOff.IsSame(grid.Area, drawn.Area);
            yield return new NailEffect
            {
                Nail = nail,
                Zone = zones.Of(nail),
                DesignArea = strength.DesignArea,
                Drawn = drawn,
                Grid = grid,
                IsChanged = !isSame,
            };
        }
    }

    /// <summary>The nail as drawn, or with another length.</summary>
    public PlaceEffect Drawn(Nail nail, double? length = null) =>
        At(nail.Section, nail.Row, Head.Of(nail), nail.Splay, nail.Inclination, length ?? nail.Length, _area[nail.Mark], WidthOf(nail));

    /// <summary>Any place of a nail.</summary>
    public PlaceEffect At(Section section, RowNumber row, Head head, double splay, double inclination, double length, double area, double width)
    {
        SectionStrength strength = _strengths[section];
        double a = Angles.ToRadians(splay), i = Angles.ToRadians(inclination);
        double inward = Math.Cos(i) * Math.Cos(a), down = Math.Sin(i);
        double square = Square(splay, inclination), gridSquare = Square(0, section.Inclination);
        IReadOnlyList<LayerStretch> layers = Layers.Of(head, Math.Cos(i) * Math.Sin(a), down, length);
        Elevation toe = Wall.Bottom.LowerAt(head.Along);
        double behind = Face.OffsetAt(head.Elevation) - Face.OffsetAt(toe);
        var cuts = new List<SurfaceCut>();
        foreach (SlipSurface surface in strength.Design.Surfaces)
        {
            double at = SlipCut.At(surface, toe.Number, behind, head.Elevation.Number, inward, down, length);
            cuts.Add(new SurfaceCut(surface, at, strength.Pullout(layers, 0, at), strength.Pullout(layers, at, length)));
        }
        return strength.Compared(
            new PlaceEffect
            {
                Area = area,
                Square = square,
                Across = Math.Sqrt(Math.Max(0, 1 - square * square)),
                Length = length,
                Width = width,
                Layers = layers,
                Cuts = cuts,
                LoadShare = area / strength.DesignArea * gridSquare / Math.Max(square, QuantityTolerance.LeastSquare),
            }, row.Whole);
    }

    /// <summary>Width that a head of a row would stand for.</summary>
    public double WidthAmong(Nail like, IReadOnlyList<Along> heads, int index)
    {
        IReadOnlyList<GridPlace> grid = [.. _gridRows[(LegOf(like), like.Section, like.Row)]];
        return grid.Count == 0 ? like.Section.HorizontalSpacing : GridPlaces.Width(Face, grid, heads, index, new Elevation(like.Elevation));
    }

    private double WidthOf(Nail nail)
    {
        IReadOnlyList<Nail> row = RowOf(nail);
        return WidthAmong(nail, [.. row.Select(n => Head.Of(n).Along)], row.ToList().IndexOf(nail));
    }

    private PlaceEffect OnGrid(Nail nail, GridPlace place)
    {
        IReadOnlyList<GridPlace> row = [.. _gridRows[(place.Row.Leg, place.Row.Section, place.Row.Number)]];
        double width = GridPlaces.Width(Face, row, [.. row.Select(p => p.At.Along)], row.ToList().FindIndex(p => p.Key == place.Key), place.At.Elevation);
        return At(nail.Section, nail.Row, place.At, 0, nail.Section.Inclination, place.Row.Length, _gridArea[place.Key], width);
    }

    /// <summary>Cosine between a nail and the face's inward normal, which points downward where the face leans into the soil.</summary>
    private double Square(double splay, double inclination)
    {
        double a = Angles.ToRadians(splay), i = Angles.ToRadians(inclination), lean = Angles.ToRadians(Wall.Batter?.Angle ?? 0);
        return Math.Cos(i) * Math.Cos(a) * Math.Cos(lean) + Math.Sin(i) * Math.Sin(lean);
    }

    private int LegOf(Nail nail) => Face.LegAt(nail.Along).Index;
}
