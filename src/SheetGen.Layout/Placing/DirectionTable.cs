namespace SheetGen.Layout.Placing;

/// <summary>
/// The directions of a row's places by their parts, each part in one piece of memory, with the length that a nail gets in each: what
/// <see cref="DirectionFan"/> reads. Filled up to whole words of bits.
/// </summary>
internal sealed class DirectionTable
{
    public DirectionTable(Turnings turnings, Func<Turning, double> lengthOf)
    {
        int words = (turnings.Count + FreeDirections.WordSize - 1) / FreeDirections.WordSize, size = words * FreeDirections.WordSize;
        Inward = new double[size];
        UpStation = new double[size];
        Down = new double[size];
        Length = new double[size];
        for (int i = 0; i < size; i++)
        {
            Turning turning = turnings[Math.Min(i, turnings.Count - 1)];
            Inward[i] = turning.Inward;
            UpStation[i] = turning.UpStation;
            Down[i] = turning.Down;
            Length[i] = lengthOf(turning);
        }
    }

    public double[] Inward { get; }

    public double[] UpStation { get; }

    public double[] Down { get; }

    public double[] Length { get; }
}
