using System.IO.Compression;
using PlankFit.Pages.Sessions;

namespace PlankFit.Pages.Serving;

/// <summary>All files of a job in one.</summary>
internal static class PaperZip
{
    /// <summary>Into a file that goes when it has been sent, so that its size is known and a long one takes no memory.</summary>
    public static FileStream Of(PaperFolder papers, CancellationToken stop)
    {
        var to = new FileStream(
            Path.GetTempFileName(),
            new FileStreamOptions
            {
                Mode = FileMode.Open,
                Access = FileAccess.ReadWrite,
                Options = FileOptions.DeleteOnClose,
            }
        );
        try
        {
            using (var zip = new ZipArchive(to, ZipArchiveMode.Create, leaveOpen: true))
            {
                for (int place = 0; place < papers.Names.Length; place++)
                {
                    stop.ThrowIfCancellationRequested();
                    Add(zip, papers, place);
                }
            }

            to.Position = 0;
            return to;
        }
        catch
        {
            to.Dispose();
            throw;
        }
    }

    private static void Add(ZipArchive zip, PaperFolder papers, int place)
    {
        ZipArchiveEntry entry = zip.CreateEntry(
            papers.Names[place].Replace('\\', '/'),
            CompressionLevel.Fastest
        );
        // As the program's own packed files have it: the same files make the same zip.
        entry.LastWriteTime = new(2000, 1, 1, 0, 0, 0, TimeSpan.Zero);
        using Stream into = entry.Open();
        using FileStream from = File.OpenRead(papers.At(place));
        from.CopyTo(into);
    }
}
