using PlankFit.Export;
using PlankFit.Export.Files;
using PlankFit.Planking;

namespace PlankFit.App;

/// <summary>The files that `check` leaves: the lines and their curvature.</summary>
internal static class CheckFiles
{
    public static void Write(OutputFolder output, Job job, FairnessReport fairness)
    {
        string findings = FindingsText.Listing(fairness.Findings(job.Units));
        output.Write(
            "check.txt",
            s => s.Write(System.Text.Encoding.UTF8.GetBytes(findings + "\n"))
        );
    }
}
