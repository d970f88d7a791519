namespace PlankFit.App;

/// <summary>What a run tells the shell.</summary>
public enum ExitCode
{
    Done = 0,

    /// <summary>The job has faults; all are listed.</summary>
    JobHasFaults = 1,

    WrongUsage = 2,

    CouldNotWrite = 3,

    Interrupted = 130,
}
