using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Set;
using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Drawing.Elevation;

/// <summary>Heights of the elevations, the scale that they share and where their strips lie in model space.</summary>
public static class StripPlanner
{
    /// <summary>Lowest and highest elevation that a wall's strip shows.</summary>
    public static (double Low, double High) Heights(WallProject project, Wall wall)
    {
        double part = project.Unit == LengthUnit.Metre ? 1 : 3;
        IEnumerable<double> Of(Profile? profile) =>
            profile is null ? [] : ElevationModel.Pieces(profile, wall.Start, wall.End).Select(p => p.Elevation);
        double top = Of(wall.Top).Max(), bottom = Of(wall.Bottom).Min();
        double room = (top - bottom) * 0.6 + part;
        double high = Of(wall.ExistingGround).Where(z => z < top + room).Append(top).Max();
        double low = Of(wall.FinishedGrade).Where(z => z > bottom - room).Append(bottom).Min();
        foreach (Obstruction o in project.Obstructions.Where(o => double.IsFinite(o.Top)))
        {
            if (o.Top < top + 2 * part)
                high = Math.Max(high, o.Top);
        }
        return (low - part, high + part);
    }

    /// <summary>The largest customary scale at which every elevation leaves half of the area to the plan; the smallest where none does.</summary>
    public static SheetScale Choose(DrawingContext context, Box area)
    {
        if (context.Project.Sheets.Scale is double given)
            return new(given, context.Project.Unit);
        IReadOnlyList<SheetScale> scales = SheetScale.Customary(context.Templates, context.Project.Unit);
        double tallest = context.Project.Walls.Max(w => Heights(context.Project, w) is var (low, high) ? high - low : 0);
        double room = area.Height * 0.58 - SheetRooms.TitleBand - SheetRooms.Bands(context, area).Top - SheetRooms.Bands(context, area).Bottom;
        foreach (SheetScale scale in scales)
        {
            if (tallest / scale.UnitsPerMillimetre <= room)
                return scale;
        }
        return scales[^1];
    }

    /// <summary>One strip a wall, one below the other.</summary>
    public static IReadOnlyList<ElevationStrip> Strips(DrawingContext context, SheetScale scale, Box area)
    {
        var strips = new List<ElevationStrip>();
        double floor = double.NaN;
        double bands = (SheetRooms.Bands(context, area).Top + SheetRooms.Bands(context, area).Bottom + 10) * scale.UnitsPerMillimetre;
        foreach (Wall wall in context.Project.Walls)
        {
            (double low, double high) = Heights(context.Project, wall);
            double shift = double.IsNaN(floor) ? 0 : Math.Floor((floor - bands - high) / 10) * 10;
            strips.Add(new(wall, Sides.DrawingSign(wall, context.Project.Sheets.FromBehind), new(0, shift), low, high));
            floor = low + shift;
        }
        return strips;
    }
}
