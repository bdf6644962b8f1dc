namespace SheetGen.Dxf;

/// <summary>Writes extended data, the last groups of an entity.</summary>
internal static class XDataWriter
{
    internal static void Write(GroupWriter o, DxfItem item)
    {
        foreach (var data in item.XData)
        {
            o.Text(1001, data.AppId);
            Values(o, data.Values);
        }
    }

    private static void Values(GroupWriter o, DxfSequence<DxfXValue> values)
    {
        foreach (var value in values)
        {
            switch (value)
            {
                case DxfXValue.Text text: o.Text(1000, text.Value); break;
                case DxfXValue.Layer layer: o.Text(1003, layer.Name); break;
                case DxfXValue.Real real: o.Real(1040, real.Value); break;
                case DxfXValue.Integer whole: o.Integer(whole.Value is >= short.MinValue and <= short.MaxValue ? 1070 : 1071, whole.Value); break;
                case DxfXValue.Point point: o.Point(1010, point.Value); break;
                case DxfXValue.List list:
                    o.Coded(1002, "{");
                    Values(o, list.Values);
                    o.Coded(1002, "}");
                    break;
            }
        }
    }
}
