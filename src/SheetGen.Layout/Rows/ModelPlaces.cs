using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Rows;

/// <summary>
/// The border to the model, whose records hold plain numbers: what the layout asks of faces, profiles and layout lines, with a type for each
/// kind of number, so that a place, a station and an elevation cannot be swapped.
/// </summary>
internal static class ModelPlaces
{
    extension(Face face)
    {
        public Leg LegAt(Along along) => face.LegAt(along.Number);

        public double OffsetAt(Elevation elevation) => face.OffsetAt(elevation.Number);

        public bool IsStraightAt(Along along) => face.IsStraightAt(along.Number);

        public double Scale(Along along, Elevation elevation) => face.Scale(along.Number, elevation.Number);

        public double Distance(Along from, Along to, Elevation elevation) => face.Distance(from.Number, to.Number, elevation.Number);

        public double SignedDistance(Along from, Along to, Elevation elevation) => face.SignedDistance(from.Number, to.Number, elevation.Number);

        public double ToMitre(Leg leg, Head head) => face.ToMitre(leg, head.Along.Number, head.Elevation.Number);

        public double MitreCut(Corner corner, Elevation elevation) => face.MitreCut(corner, elevation.Number);

        public Along StartOf(Leg leg, Elevation elevation) => new(face.StartOf(leg, elevation.Number));

        public Along EndOf(Leg leg, Elevation elevation) => new(face.EndOf(leg, elevation.Number));

        public Along PlaceAt(Along from, double distance, Elevation elevation) => new(face.PlaceAt(from.Number, distance, elevation.Number));

        public Vector2D NormalAt(Along along) => face.NormalAt(along.Number);

        public Vector3D PointAt(Head head) => face.PointAt(head.Along.Number, head.Elevation.Number);

        public Hole HoleAt(Head head, double splay, double inclination, double length, double diameter, double drift) =>
            face.HoleAt(head.Along.Number, head.Elevation.Number, splay, inclination, length, diameter, drift);
    }

    extension(Profile profile)
    {
        public Elevation At(Along along) => new(profile.At(along.Number));

        public Elevation Before(Along along) => new(profile.Before(along.Number));

        public Elevation Lowest(Along start, Along end) => new(profile.Lowest(start.Number, end.Number));

        public Elevation Highest(Along start, Along end) => new(profile.Highest(start.Number, end.Number));

        /// <summary>The lower of both sides of a vertical step.</summary>
        public Elevation LowerAt(Along along) => Elevation.Min(profile.At(along), profile.Before(along));

        /// <summary>The higher of both sides of a vertical step.</summary>
        public Elevation HigherAt(Along along) => Elevation.Max(profile.At(along), profile.Before(along));

        /// <summary>The places of its points.</summary>
        public IEnumerable<Along> Places => profile.Points.Select(p => new Along(p.Along));

        /// <summary>Two places and those of the points between them.</summary>
        public IEnumerable<Along> PlacesBetween(Along start, Along end) => profile.Between(start.Number, end.Number).Select(p => new Along(p.Along));
    }

    extension(Leg leg)
    {
        public bool Has(Along along) => leg.Has(along.Number);
    }

    extension(LayoutLine line)
    {
        public Vector2D TangentAt(Along along) => line.TangentAt(along.Number);

        public Station StationOf(Along along) => new(line.StationOf(along.Number));

        public Along AlongOf(Station station) => new(line.AlongOf(station.Number));

        /// <summary>The place whose printed station is rounded to the quantum.</summary>
        public Along Rounded(Along along, LengthUnit unit) => line.AlongOf(line.StationOf(along).Rounded(unit));
    }

    extension(Wall wall)
    {
        public Station StationOf(Along along) => wall.LayoutLine.StationOf(along);

        public string StationText(Along along, LengthUnit unit) => wall.StationText(along.Number, unit);
    }
}
