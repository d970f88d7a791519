using System.IO.Compression;

namespace PlankFit.Export.Tables;

/// <summary>
/// A zip's entries are stamped with the time at which they were made, and so two files of the same content differ. Here they are packed anew, in the same
/// order, all at the start of zip's own calendar, 1 January 1980.
/// </summary>
public static class ConstantZip
{
    private static readonly DateTimeOffset Start = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>Repacks a zip; both streams are left open.</summary>
    public static void Rewrite(Stream from, Stream into)
    {
        using ZipArchive source = new(from, ZipArchiveMode.Read, leaveOpen: true);
        using ZipArchive target = new(into, ZipArchiveMode.Create, leaveOpen: true);
        foreach (ZipArchiveEntry entry in source.Entries)
        {
            ZipArchiveEntry copy = target.CreateEntry(entry.FullName, CompressionLevel.Optimal);
            copy.LastWriteTime = Start;
            using Stream read = entry.Open(),
                write = copy.Open();
            read.CopyTo(write);
        }
    }
}
