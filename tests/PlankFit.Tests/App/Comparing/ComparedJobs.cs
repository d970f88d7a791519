using System.Globalization;
using PlankFit.App.Comparing;
using PlankFit.Export.Comparing;
using PlankFit.Planking.Laying;
using PlankFit.Reading.Text;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.App.Comparing;

/// <summary>Jobs to hold lay-outs against each other on.</summary>
internal static class ComparedJobs
{
    /// <summary>A prism 6 m long, keel 30 out, chine 1000 out and 364 up, one skin of 9 mm; in any unit of so many millimetres.</summary>
    public static string Prism(
        TempFolder folder,
        string units = "mm",
        decimal inMm = 1,
        string layer = ""
    )
    {
        string Row(string line, string measure, Func<int, decimal> of) =>
            $"{line},{measure},{string.Join(',', Enumerable.Range(0, 7).Select(i => (of(i) / inMm).ToString(CultureInfo.InvariantCulture)))}\n";
        File.WriteAllText(
            folder.File("offsets.csv"),
            "line,measure,0,1,2,3,4,5,6\n"
                + Row("", "position", i => 1016 * i)
                + Row("keel edge", "height", _ => 10.16m)
                + Row("keel edge", "half-breadth", _ => 25.4m)
                + Row("chine", "height", _ => 406.4m)
                + Row("chine", "half-breadth", _ => 1016m)
        );
        string N(decimal mm) => (mm / inMm).ToString(CultureInfo.InvariantCulture);
        string job = folder.File("job.toml");
        File.WriteAllText(
            job,
            $"""
            # a prism
            [job]
            name = "prism"
            units = "{units}"
            [hull]
            offsets = "offsets.csv"
            offsets-are-to = "outside"
            keel = "keel edge"
            chine = "chine"
            [[layer]]
            name = "skin"
            thickness = {N(9.525m)}
            width = {N(152.4m)}     # of the stock
            heads = "aft"
            angle = 45
            {layer}
            """
        );
        return job;
    }

    public static string Launch(TempFolder folder, string more = "")
    {
        foreach (string file in Directory.EnumerateFiles(DemoTables.Folder("survey-launch")))
        {
            File.Copy(file, folder.File(Path.GetFileName(file)));
        }

        File.AppendAllText(folder.File("job.toml"), more);
        return folder.File("job.toml");
    }

    public static Tried Try(
        string job,
        CompareAsked asked,
        Action<Comparison>? found = null,
        CancellationToken? stop = null
    ) =>
        Trying.Of(
            job,
            TextFile.Read(job, Path.GetFileName(job)),
            asked,
            new Progress<PlanProgress>(),
            stop ?? TestContext.Current.CancellationToken,
            found
        );

    public static Comparison Laid(string job, CompareAsked asked)
    {
        Tried tried = Try(job, asked);
        Assert.True(
            tried.Comparison is not null,
            string.Join("\n", tried.Findings.Select(f => $"{f.Where}: {f.Message}"))
        );
        return tried.Comparison!;
    }
}
