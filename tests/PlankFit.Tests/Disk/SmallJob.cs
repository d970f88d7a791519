using PlankFit.App.Keels;
using PlankFit.App.Laying;
using PlankFit.App.Marking;
using PlankFit.App.Nesting;
using PlankFit.App.Running;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Laying;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Disk;

/// <summary>The demo tender in one skin of wide planks, with a keel layer and boards: every verb has something to write, and little of it.</summary>
internal static class SmallJob
{
    /// <summary>Writes the job's files into a folder; two widths give two jobs whose files differ in number and content.</summary>
    /// <returns>The job's file.</returns>
    public static string In(string folder, int widthMm)
    {
        Directory.CreateDirectory(folder);
        File.Copy(
            Path.Combine(DemoTables.Folder("tender"), "offsets.csv"),
            Path.Combine(folder, "offsets.csv")
        );
        File.WriteAllText(
            Path.Combine(folder, "stock.csv"),
            "board,count,length,width,thickness\nA,12,3000,420,9\n"
        );
        string job = Path.Combine(folder, "job.toml");
        File.WriteAllText(
            job,
            $"""
            [job]
            name = "Small"
            units = "mm"

            [hull]
            offsets = "offsets.csv"
            offsets-are-to = "outside"
            keel = "keel edge"
            chine = "chine"

            [[layer]]
            name = "only"
            thickness = 9
            width = {widthMm.ToString(System.Globalization.CultureInfo.InvariantCulture)}
            heads = "aft"
            angle = 45

            [[keel-layer]]
            name = "keel"
            meets = "only"
            thickness = 9
            half-width = "mitre"

            [nest]
            stock = "stock.csv"
            rounds = 0

            """
        );
        return job;
    }

    /// <summary>A verb's run in this process, to its end.</summary>
    public static void Run(string verb, string job, string folder)
    {
        var request = new RunRequest(job, folder, Json: false);
        var nobody = new Progress<PlanProgress>();
        CancellationToken stop = TestContext.Current.CancellationToken;
        RunReport report = verb switch
        {
            "lay" => LayRun.Run(request, nobody, new(), stop),
            "nest" => NestRun.Run(request, nobody, new(), stop),
            "keel" => KeelRun.Run(request, nobody, new(), stop),
            "sawn" => SawnRun.Run(request, ["S1-02"], nobody, new(), stop),
            _ => throw new ArgumentException(verb),
        };
        Assert.DoesNotContain(report.Findings, f => f.Severity == Severity.Error);
    }
}
