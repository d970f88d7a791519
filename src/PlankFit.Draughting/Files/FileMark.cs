using System.Globalization;
using PlankFit.Hashing;

namespace PlankFit.Draughting.Files;

/// <summary>By what a file is known again: its size and the SHA-256 of its bytes.</summary>
/// <param name="Sha256">In lower-case hexadecimal.</param>
public sealed record FileMark(long Bytes, string Sha256)
{
    /// <summary>The mark of a file on the disk. What has no size (it is empty, or a pipe or a device) is not opened: a pipe would never let go.</summary>
    public static FileMark Of(string path)
    {
        if (new FileInfo(path).Length == 0)
        {
            return new(0, Sha256Hash.HexOf([]));
        }

        using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read);
        return Of(stream);
    }

    /// <summary>The mark of all that a stream holds, which is read from its beginning.</summary>
    public static FileMark Of(Stream stream)
    {
        stream.Position = 0;
        return new(stream.Length, Convert.ToHexStringLower(Sha256Hash.Of(stream)));
    }

    /// <summary>Two fields of a line, tab between them.</summary>
    public override string ToString() => FormattableString.Invariant($"{Bytes}\t{Sha256}");

    public static FileMark? Parse(string bytes, string sha256) =>
        long.TryParse(bytes, NumberStyles.None, CultureInfo.InvariantCulture, out long size)
        && sha256.Length == 2 * Sha256Hash.SizeInBytes
        && sha256.All(char.IsAsciiHexDigitLower)
            ? new(size, sha256)
            : null;
}
