namespace SheetGen.Dxf;

/// <summary>A value of extended data.</summary>
public abstract record DxfXValue
{
    private DxfXValue()
    {
    }

    /// <summary>Text of at most 255 characters (group 1000).</summary>
    public sealed record Text(string Value) : DxfXValue;

    /// <summary>A number (group 1040).</summary>
    public sealed record Real(double Value) : DxfXValue;

    /// <summary>A whole number (group 1070 if it fits in 16 bits, else 1071).</summary>
    public sealed record Integer(int Value) : DxfXValue;

    /// <summary>Name of a layer of the document (group 1003).</summary>
    public sealed record Layer(string Name) : DxfXValue;

    /// <summary>A point that stays as it is when the entity moves (group 1010).</summary>
    public sealed record Point(DxfPoint Value) : DxfXValue;

    /// <summary>Values bracketed together (group 1002).</summary>
    public sealed record List(DxfSequence<DxfXValue> Values) : DxfXValue;
}
