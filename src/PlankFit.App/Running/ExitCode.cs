namespace PlankFit.App.Running;

/// <summary>What a run tells the shell.</summary>
public enum ExitCode
{
    Done = 0,

    /// <summary>The job has faults; all are listed.</summary>
    JobHasFaults = 1,

    WrongUsage = 2,

    CouldNotWrite = 3,

    /// <summary>Done as far as the stock reaches: pieces are missing, everything else is planned and written.</summary>
    StockIsShort = 4,

    Interrupted = 130,
}
