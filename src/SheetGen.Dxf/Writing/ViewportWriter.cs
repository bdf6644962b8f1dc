namespace SheetGen.Dxf;

/// <summary>Writes the viewports of a layout: first the one that stands for the sheet itself, then the windows into the model.</summary>
internal static class ViewportWriter
{
    // Bits of the viewport's status, and what a sheet's own viewport has in files of common programs.
    private const int Enabled = 32768, Locked = 16384, SheetStatus = 819232;

    internal static void Write(EntityWriter w, PlannedSpace space)
    {
        var sheet = space.Sheet!;
        var middle = new DxfPoint(sheet.Width / 2, sheet.Height / 2);
        Write(w, new("0", middle, sheet.Width, sheet.Height, middle, sheet.Height), space.SheetViewport, 1, SheetStatus);
        for (var i = 0; i < sheet.Viewports.Count; i++)
        {
            var viewport = sheet.Viewports[i];
            Write(w, viewport, 0, i + 2, Enabled + (viewport.Locked ? Locked : 0));
        }
    }

    private static void Write(EntityWriter w, DxfViewport viewport, int handle, int id, int status)
    {
        var o = w.Out;
        w.Begin("VIEWPORT", viewport.Layer, "AcDbViewport", handle);
        o.Point(10, viewport.Center);
        o.Real(40, viewport.Width);
        o.Real(41, viewport.Height);
        o.Integer(68, id);
        o.Integer(69, id);
        // The centre is counted in the turned axes of the view.
        o.Point2(12, viewport.Twist == 0 ? viewport.ViewCenter : viewport.ViewCenter.Rotated(viewport.Twist));
        o.Point2(13, DxfPoint.Origin);
        o.Point2(14, new(1, 1));
        o.Point2(15, new(1, 1));
        o.Vector(16, 0, 0, 1);
        o.Vector(17, 0, 0, 0);
        o.Real(42, 50);
        o.Real(43, 0);
        o.Real(44, 0);
        o.Real(45, viewport.ViewHeight);
        o.Real(50, 0);
        o.Real(51, viewport.Twist);
        o.Integer(72, 100);
        foreach (var layer in viewport.FrozenLayers)
            o.Handle(331, w.Job.Plan["LAYER", layer]);
        o.Integer(90, status);
        o.Coded(1, "");
        o.Integer(281, 0);
        o.Integer(71, 1);
        o.Integer(74, 0);
        o.Vector(110, 0, 0, 0);
        o.Vector(111, 1, 0, 0);
        o.Vector(112, 0, 1, 0);
        o.Integer(79, 0);
        o.Real(146, 0);
        XDataWriter.Write(o, viewport);
    }
}
