using System.Buffers.Binary;
using System.IO.Compression;
using System.Text;

namespace SheetGen.Writers.Picture;

/// <summary>Writes a grey picture as PNG (ISO/IEC 15948): eight bits a pixel, one image chunk.</summary>
internal static class PngFile
{
    private static readonly uint[] Table = [.. Enumerable.Range(0, 256).Select(n =>
    {
        uint c = (uint)n;
        for (int k = 0; k < 8; k++)
            c = (c & 1) != 0 ? 0xEDB88320 ^ (c >> 1) : c >> 1;
        return c;
    })];

    /// <param name="pixels">Rows from the top, 0 black to 255 white.</param>
    /// <param name="pixelsPerMetre">Resolution that the file states.</param>
    public static void Write(byte[] pixels, int width, int height, int pixelsPerMetre, Stream stream)
    {
        stream.Write([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A]);
        byte[] head = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(head, width);
        BinaryPrimitives.WriteInt32BigEndian(head.AsSpan(4), height);
        head[8] = 8;
        Chunk(stream, "IHDR", head);
        byte[] size = new byte[9];
        BinaryPrimitives.WriteInt32BigEndian(size, pixelsPerMetre);
        BinaryPrimitives.WriteInt32BigEndian(size.AsSpan(4), pixelsPerMetre);
        size[8] = 1;
        Chunk(stream, "pHYs", size);
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.Optimal, leaveOpen: true))
        {
            for (int y = 0; y < height; y++)
            {
                zlib.WriteByte(0);
                zlib.Write(pixels, y * width, width);
            }
        }
        Chunk(stream, "IDAT", packed.ToArray());
        Chunk(stream, "IEND", []);
    }

    private static void Chunk(Stream stream, string type, byte[] data)
    {
        byte[] body = [.. Encoding.ASCII.GetBytes(type), .. data];
        Span<byte> number = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(number, data.Length);
        stream.Write(number);
        stream.Write(body);
        uint crc = 0xFFFFFFFF;
        foreach (byte b in body)
            crc = Table[(crc ^ b) & 0xFF] ^ (crc >> 8);
        BinaryPrimitives.WriteUInt32BigEndian(number, ~crc);
        stream.Write(number);
    }
}
