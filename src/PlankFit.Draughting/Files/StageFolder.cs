using System.Globalization;
using System.Text;

namespace PlankFit.Draughting.Files;

/// <summary>
/// The hidden folder inside a target where a run keeps its new files until they are moved, the old ones while they are, and the journal of the moves. One run
/// holds it at a time; a run that is killed leaves it to the next.
/// </summary>
internal sealed class StageFolder : IDisposable
{
    public const string Name = ".plankfit-writing";
    private const string WhoName = "who";

    private readonly FileStream @lock;

    private StageFolder(string folder, FileStream held)
    {
        (Folder, Path) = (folder, In(folder));
        @lock = held;
    }

    /// <summary>The target that it stands in.</summary>
    public string Folder { get; }

    public string Path { get; }

    public string JournalPath => System.IO.Path.Combine(Path, "journal");

    /// <summary>The journal's second name: under it the moves are taken back.</summary>
    public string BackJournalPath => System.IO.Path.Combine(Path, "journal-back");

    /// <summary>Whether moves were begun here and not ended.</summary>
    public bool IsUnfinished => File.Exists(JournalPath) || File.Exists(BackJournalPath);

    public string New(string name) => System.IO.Path.Combine(Path, "new", name);

    public string Old(string name) => System.IO.Path.Combine(Path, "old", name);

    public static bool IsIn(string folder) => Directory.Exists(In(folder));

    /// <param name="folder">Must exist.</param>
    /// <param name="command">Who holds it, for whoever finds it held.</param>
    /// <exception cref="OutputException">Another run holds it, or something of that name is in the way.</exception>
    public static StageFolder Hold(string folder, string command)
    {
        for (int tries = 0; ; tries++)
        {
            string stage = In(folder);
            Refuse(folder, Name);
            try
            {
                Directory.CreateDirectory(stage);
            }
            // The name was taken and then no folder was there: the run before took its stage away between the library's two looks.
            catch (IOException) when (!File.Exists(stage) && tries < 20)
            {
                continue;
            }

            Refuse(folder, $"{Name}/lock");
            try
            {
                // Made, locked and removed at its end: the library sees to it that nobody holds a lock that was removed meanwhile.
                var held = new FileStream(
                    System.IO.Path.Combine(stage, "lock"),
                    FileMode.OpenOrCreate,
                    FileAccess.Write,
                    FileShare.None,
                    bufferSize: 1,
                    FileOptions.DeleteOnClose
                );
                var mine = new StageFolder(folder, held);
                mine.SayWho(command);
                return mine;
            }
            // The run before took its stage away in this very moment: the file was not made for want of its folder, which the library says in one way where the folder
            // is still gone when it looks for the reason, and in the other where a third run has made it again.
            catch (IOException gone)
                when (gone is DirectoryNotFoundException or FileNotFoundException && tries < 20) { }
            // A lock held by another process: EAGAIN on Linux and macOS, a sharing violation on Windows.
            catch (IOException failure)
                when (failure.HResult is 11 or 35 or unchecked((int)0x80070020))
            {
                throw new OutputException(
                    $"Cannot write into {folder}: another run is writing there{Who(stage)}. Wait until it has ended, then run again.",
                    folder,
                    failure
                );
            }
        }
    }

    /// <summary>Removes what is kept for a run; not while its moves are unfinished.</summary>
    public void Clear()
    {
        foreach (string part in (string[])["new", "old"])
        {
            string path = System.IO.Path.Combine(Path, part);
            if (Directory.Exists(path))
            {
                Directory.Delete(path, recursive: true);
            }
        }

        File.Delete(JournalPath + ".writing");
    }

    public void Dispose()
    {
        if (!IsUnfinished)
        {
            AtomicFile.Quietly(Clear);
        }

        AtomicFile.Quietly(() => File.Delete(System.IO.Path.Combine(Path, WhoName)));
        @lock.Dispose();
        // Only where it is empty: the next run may be in it already.
        AtomicFile.Quietly(() => Directory.Delete(Path, recursive: false));
    }

    private static string In(string folder) => System.IO.Path.Combine(folder, Name);

    private static void Refuse(string folder, string name)
    {
        string path = System.IO.Path.Combine(folder, name);
        if (InTheWay.IsLink(path))
        {
            throw new OutputException(
                $"Cannot write into {folder}: {name} in it is a symbolic link, and links are not followed. Remove the link, or choose another folder.",
                path
            );
        }
    }

    private void SayWho(string command)
    {
        // A system without a list of users has no name for this one, and that is no reason to stop.
        string user = "a user without a name";
        AtomicFile.Quietly(() => user = Environment.UserName);
        string who = string.Create(
            CultureInfo.InvariantCulture,
            $"plankfit {command}, process {Environment.ProcessId} of {user} on {Environment.MachineName}"
        );
        AtomicFile.Quietly(() =>
            File.WriteAllText(System.IO.Path.Combine(Path, WhoName), who, new UTF8Encoding(false))
        );
    }

    private static string Who(string stage)
    {
        string who = "";
        AtomicFile.Quietly(() =>
            who = File.ReadAllText(System.IO.Path.Combine(stage, WhoName), Encoding.UTF8)
        );
        return who.Length is > 0 and < 500 && !who.Any(char.IsControl) ? $" ({who})" : "";
    }
}
