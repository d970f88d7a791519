using System.Text;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Disk;

/// <summary>The same job gives the same bytes wherever the machine stands and whatever language it speaks.</summary>
public sealed class SameBytesAnywhereTests : IDisposable
{
    private readonly TempFolder temp = new();
    private readonly string job;

    public SameBytesAnywhereTests() => job = SmallJob.In(temp.File("job"), 400);

    public void Dispose() => temp.Dispose();

    [Fact]
    public void NoFileDependsOnTimeZoneOrLanguage()
    {
        // Where long runs are asked for, as in CI.
        if (!LongRuns.Asked)
        {
            return;
        }

        // This process: a comma culture, and the machine's own zone.
        SmallJob.Run("lay", job, temp.File("here"));
        string[] here = FolderState.Of(temp.File("here"));
        string there = temp.File("there");
        (int code, _, string errors) = BuiltProgram.Run(
            ["lay", job, "--out", there],
            ("TZ", "Asia/Kathmandu"),
            ("LC_ALL", "ne_NP.UTF-8"),
            ("LANG", "ne_NP.UTF-8")
        );
        Assert.True(code == 0, errors);
        Assert.Equal(here, FolderState.Of(there));
    }

    [Fact]
    public void PdfFilesCarryNoDate()
    {
        SmallJob.Run("keel", job, temp.File("out"));
        string pdf = Encoding.Latin1.GetString(File.ReadAllBytes(temp.File("out/sheets/keel.pdf")));
        Assert.StartsWith("%PDF", pdf, StringComparison.Ordinal);
        Assert.DoesNotContain("Date", pdf, StringComparison.Ordinal);
    }
}
