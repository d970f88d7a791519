namespace PlankFit.Tests.Support;

/// <summary>The demo tender with its first layer only, and with an [output] of the test's own: a small job for what costs much.</summary>
internal static class OneLayerTender
{
    /// <summary>Writes job and table into the folder; returns the job's file.</summary>
    public static string In(TempFolder folder, string output)
    {
        string source = DemoTables.Folder("tender"),
            job = File.ReadAllText(Path.Combine(source, "job.toml"));
        int first = job.IndexOf("[[layer]]", StringComparison.Ordinal),
            second = job.IndexOf("[[layer]]", first + 1, StringComparison.Ordinal);
        File.WriteAllText(folder.File("job.toml"), job[..second] + "\n[output]\n" + output + "\n");
        File.Copy(Path.Combine(source, "offsets.csv"), folder.File("offsets.csv"));
        return folder.File("job.toml");
    }
}
