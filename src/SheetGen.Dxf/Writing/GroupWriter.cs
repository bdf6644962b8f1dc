using System.Globalization;
using System.Text;

namespace SheetGen.Dxf;

/// <summary>Prints groups: a code line and a value line each.</summary>
internal sealed class GroupWriter(bool unicode)
{
    private readonly StringBuilder _text = new();

    /// <summary>A text value, encoded for the file.</summary>
    internal void Text(int code, string value) => Coded(code, StringCoding.Encode(value, unicode));

    /// <summary>A text value that is already as the file holds it.</summary>
    internal void Coded(int code, string value) => Code(code).Append(value).Append("\r\n");

    internal void Integer(int code, int value) => Code(code).Append(CultureInfo.InvariantCulture, $"{value}").Append("\r\n");

    internal void Flag(int code, bool value) => Integer(code, value ? 1 : 0);

    internal void Handle(int code, int handle) => Code(code).Append(CultureInfo.InvariantCulture, $"{handle:X}").Append("\r\n");

    internal void Real(int code, double value) => Code(code).Append(NumberCoding.Format(value)).Append("\r\n");

    /// <summary>A point of the plane, without Z.</summary>
    internal void Point2(int code, DxfPoint point)
    {
        Real(code, point.X);
        Real(code + 10, point.Y);
    }

    /// <summary>A point with Z 0.</summary>
    internal void Point(int code, DxfPoint point) => Vector(code, point.X, point.Y, 0);

    internal void Vector(int code, double x, double y, double z)
    {
        Real(code, x);
        Real(code + 10, y);
        Real(code + 20, z);
    }

    /// <summary>Encodes a string as this file does.</summary>
    internal string Encode(string value) => StringCoding.Encode(value, unicode);

    internal void CopyTo(Stream stream)
    {
        using var writer = new StreamWriter(stream, new UTF8Encoding(false), 1 << 16, leaveOpen: true);
        foreach (var chunk in _text.GetChunks())
            writer.Write(chunk.Span);
    }

    private StringBuilder Code(int code)
    {
        if (code < 100)
            _text.Append(code < 10 ? "  " : " ");
        return _text.Append(CultureInfo.InvariantCulture, $"{code}").Append("\r\n");
    }
}
