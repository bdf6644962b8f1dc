using System.Security.Cryptography;
using System.Text;
using SheetGen.Model;

namespace SheetGen.Exchange.Common;

/// <summary>
/// Ids made from names alone, so that the same nail has the same id in every file and in every build: UUID version 5 (RFC 9562, 5.5) of the
/// project's number (its title where it has none) and a key such as "bar|A-3-07".
/// </summary>
internal sealed class StableId(WallProject project)
{
    /// <summary>The name space of this program's ids.</summary>
    private static readonly Guid Space = new("7d2a0c8e-53b1-4b5e-9f6a-2c1d64e0a9b3");

    private readonly string _project = project.Info.Number.Length > 0 ? project.Info.Number : project.Info.Title;

    public Guid Of(string key)
    {
        byte[] name = Encoding.UTF8.GetBytes(_project + "|" + key), all = new byte[16 + name.Length];
        Space.TryWriteBytes(all, bigEndian: true, out _);
        name.CopyTo(all, 16);
        // RFC 9562 names the hash of a name-based identifier; nothing here is kept secret by it.
#pragma warning disable CA5350
        byte[] id = SHA1.HashData(all)[..16];
#pragma warning restore CA5350
        id[6] = (byte)((id[6] & 0x0F) | 0x50);
        id[8] = (byte)((id[8] & 0x3F) | 0x80);
        return new Guid(id, bigEndian: true);
    }

    /// <summary>The same id as IFC writes it: 22 digits of a base of 64.</summary>
    public string Ifc(string key) => Compress(Of(key));

    /// <summary>A UUID in the 22 digits of IFC's GlobalId (ISO 16739-1, IfcGloballyUniqueId): 2 digits for the first 8 bits, 4 for each further 24.</summary>
    internal static string Compress(Guid id)
    {
        const string digits = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz_$";
        byte[] bytes = id.ToByteArray(bigEndian: true);
        var text = new StringBuilder(22);
        Append(bytes[0], 2);
        for (int i = 1; i < 16; i += 3)
            Append((bytes[i] << 16) | (bytes[i + 1] << 8) | bytes[i + 2], 4);
        return text.ToString();

        void Append(int number, int count)
        {
            for (int shift = 6 * (count - 1); shift >= 0; shift -= 6)
                text.Append(digits[(number >> shift) & 63]);
        }
    }
}
