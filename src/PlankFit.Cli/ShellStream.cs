using System.Runtime.InteropServices;

namespace PlankFit.Cli;

/// <summary>What was to be said cannot be: the shell's stream is closed, full, or nobody reads it any more.</summary>
internal sealed class LostStreamException(string message) : Exception(message);

/// <summary>
/// Standard output or standard error of a Unix shell. The library's own streams say nothing where the reader has gone; this throws
/// <see cref="LostStreamException"/>, so that a result that went nowhere is not told as done.
/// </summary>
internal sealed class ShellStream : Stream
{
    private readonly int number;
    private readonly string name;

    private ShellStream(int number, string name)
    {
        (this.number, this.name) = (number, name);
        IsClosed = !IsTheShells(number);
    }

    /// <summary>Whether the shell had closed it (`2>&amp;-`) when the program began.</summary>
    public bool IsClosed { get; }

    public override bool CanRead => false;

    public override bool CanSeek => false;

    public override bool CanWrite => true;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    /// <summary>Puts both in the place of the library's, for all that is written to <see cref="Console"/> from then on.</summary>
    /// <returns>Null where the system has other streams.</returns>
    public static (ShellStream Output, ShellStream Errors)? Open()
    {
        if (OperatingSystem.IsWindows())
        {
            return null;
        }

        ShellStream output = new(1, "standard output"),
            errors = new(2, "standard error");
        Console.SetOut(new StreamWriter(output, Console.Out.Encoding) { AutoFlush = true });
        Console.SetError(new StreamWriter(errors, Console.Error.Encoding) { AutoFlush = true });
        return (output, errors);
    }

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        const int Interrupted = 4,
            BusyOnLinux = 11,
            BusyOnMac = 35;
        if (IsClosed)
        {
            throw new LostStreamException($"{name} is closed");
        }

        while (!buffer.IsEmpty)
        {
            nint wrote = write(number, in MemoryMarshal.GetReference(buffer), buffer.Length);
            if (wrote >= 0)
            {
                buffer = buffer[(int)wrote..];
                continue;
            }

            int error = Marshal.GetLastPInvokeError();
            if (error is BusyOnLinux or BusyOnMac)
            {
                // Another program has set the pipe that we share not to wait, and it is full.
                Thread.Sleep(5);
            }
            else if (error != Interrupted)
            {
                throw new LostStreamException(
                    $"{name} takes nothing: {Marshal.GetPInvokeErrorMessage(error)}"
                );
            }
        }
    }

    public override void Write(byte[] buffer, int offset, int count) =>
        Write(buffer.AsSpan(offset, count));

    public override void Flush() { }

    public override int Read(byte[] buffer, int offset, int count) =>
        throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    /// <summary>
    /// Where the shell closed a stream, a pipe of the runtime's own has its number by now, and a message written there would confuse the runtime. What came from
    /// the shell was kept open over the start of the program; what the runtime opens is marked to be closed at such a start, which Linux shows.
    /// </summary>
    private static bool IsTheShells(int number)
    {
        const int ClosedAtAStart = 0x80000; // O_CLOEXEC, octal 2000000
        const string Of = "/proc/self/fdinfo";
        if (!Directory.Exists(Of))
        {
            return true;
        }

        try
        {
            string flags = File.ReadLines($"{Of}/{number}")
                .First(l => l.StartsWith("flags:", StringComparison.Ordinal));
            return (Convert.ToInt32(flags["flags:".Length..].Trim(), 8) & ClosedAtAStart) == 0;
        }
        catch (FileNotFoundException)
        {
            return false;
        }
    }

    [DllImport("libc", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern nint write(int number, in byte from, nint count);
}
