namespace SheetGen.Dxf;

/// <summary>Writes texts, attributes and the inserts that carry them.</summary>
internal static class TextEntityWriter
{
    internal static void Text(EntityWriter w, DxfText text)
    {
        Begin(w, "TEXT", text);
        w.Out.Coded(100, "AcDbText");
        VerticalAlign(w.Out, 73, text);
    }

    internal static void MText(EntityWriter w, DxfMText text, int handle = 0, int reactor = 0)
    {
        var o = w.Out;
        w.Begin("MTEXT", text.Layer, "AcDbMText", handle, reactor);
        o.Point(10, text.Position);
        o.Real(40, text.Height);
        o.Real(41, text.Width);
        o.Integer(71, (int)text.Attachment);
        o.Integer(72, 5);
        var chunks = MTextCoding.Chunks(o.Encode(MTextCoding.Encode(text.Value)));
        for (var i = 0; i < chunks.Count; i++)
            o.Coded(i < chunks.Count - 1 ? 3 : 1, chunks[i]);
        o.Text(7, text.Style);
        // A direction, because programs do not agree on the unit of the angle (group 50).
        o.Point(11, new DxfPoint(1, 0).Rotated(text.Rotation));
        o.Integer(73, 1);
        o.Real(44, text.LineSpacing);
        XDataWriter.Write(o, text);
    }

    internal static void AttributeDefinition(EntityWriter w, DxfAttributeDefinition definition)
    {
        Begin(w, "ATTDEF", definition.Text);
        w.Out.Coded(100, "AcDbAttributeDefinition");
        if (w.Job.IsModern)
            w.Out.Integer(280, 0);
        w.Out.Text(3, definition.Prompt);
        AttributeEnd(w, definition.Tag, definition.Invisible, definition.Text);
    }

    internal static void Insert(EntityWriter w, DxfInsert insert)
    {
        var o = w.Out;
        var handle = w.Begin("INSERT", insert.Layer, "AcDbBlockReference");
        if (insert.Attributes.Count > 0)
            o.Integer(66, 1);
        o.Text(2, insert.Block);
        o.Point(10, insert.Position);
        if (insert.ScaleX != 1 || insert.ScaleY != 1)
        {
            o.Real(41, insert.ScaleX);
            o.Real(42, insert.ScaleY);
            o.Real(43, Math.Abs(insert.ScaleX));
        }
        if (insert.Rotation != 0)
            o.Real(50, insert.Rotation);
        XDataWriter.Write(o, insert);
        if (insert.Attributes.Count == 0)
            return;
        var inner = new EntityWriter(w.Job, w.Owner with { Handle = handle });
        foreach (var attribute in insert.Attributes)
        {
            Begin(inner, "ATTRIB", attribute.Text);
            o.Coded(100, "AcDbAttribute");
            if (w.Job.IsModern)
                o.Integer(280, 0);
            AttributeEnd(inner, attribute.Tag, attribute.Invisible, attribute.Text);
            XDataWriter.Write(o, attribute.Text);
        }
        inner.Begin("SEQEND", insert.Layer, null);
    }

    private static void AttributeEnd(EntityWriter w, string tag, bool invisible, DxfText text)
    {
        w.Out.Text(2, tag);
        w.Out.Flag(70, invisible);
        VerticalAlign(w.Out, 74, text);
        if (w.Job.IsModern)
            w.Out.Integer(280, 1);
    }

    private static void Begin(EntityWriter w, string kind, DxfText text)
    {
        var o = w.Out;
        w.Begin(kind, text.Layer, "AcDbText");
        o.Point(10, text.Position);
        o.Real(40, text.Height);
        o.Text(1, TextCoding.Encode(text.Value));
        if (text.Rotation != 0)
            o.Real(50, text.Rotation);
        if (text.WidthFactor != 1)
            o.Real(41, text.WidthFactor);
        if (text.ObliqueAngle != 0)
            o.Real(51, text.ObliqueAngle);
        o.Text(7, text.Style);
        if (!IsAligned(text))
            return;
        o.Integer(72, (int)text.Align);
        o.Point(11, text.Position);
    }

    private static void VerticalAlign(GroupWriter o, int code, DxfText text)
    {
        if (IsAligned(text))
            o.Integer(code, (int)text.VerticalAlign);
    }

    private static bool IsAligned(DxfText text) =>
        text.Align != DxfTextAlign.Left || text.VerticalAlign != DxfTextVerticalAlign.Baseline;
}
