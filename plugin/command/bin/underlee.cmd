@echo off
rem Starts Underlee on Windows: what the script "underlee" beside it does elsewhere.
rem
rem Most runs take a second or two, so that Java's slower, stronger compiler and its parallel
rem collector cost more than they bring; a small space for objects keeps the memory small. The
rem first run keeps the classes that it loaded in an archive beside the program, where that folder can
rem be written; the next ones start from it.
rem
rem It was written without a Windows machine to try it on; "java -jar underlee.jar" does the same.
rem
rem UNDERLEE_JAVA_OPTIONS is handed to Java, such as -Xmx4g for a very large model (64m is the least).
setlocal EnableExtensions DisableDelayedExpansion

set "jar=%~dp0underlee.jar"
if not exist "%jar%" set "jar=%~dp0..\target\underlee.jar"
if not exist "%jar%" set "jar=%~dp0..\lib\app\underlee.jar"
if exist "%jar%" goto built
echo There is no underlee.jar beside "%~f0" and none is built. Run mvn -q -DskipTests package. 1>&2
exit /b 2
:built

set "java=%~dp0..\lib\runtime\bin\java.exe"
if exist "%java%" goto found
set "java=java.exe"
if defined JAVA_HOME set "java=%JAVA_HOME%\bin\java.exe"
:found

rem What Java says of the archive must not get between the lines of a result.
set "options=-XX:+UseSerialGC -Xms64m -Xmn16m -XX:TieredStopAtLevel=1 -Xlog:disable -Xlog:all=error:stderr"

rem The name carries the jar's date and size, so that an archive of another jar is never taken.
for %%F in ("%jar%") do set "stamp=%%~tF-%%~zF"
set "stamp=%stamp:/=-%"
set "stamp=%stamp::=-%"
set "stamp=%stamp: =-%"
set "stamp=%stamp:.=-%"
set "archive=%jar:~0,-4%-%stamp%.jsa"

if exist "%archive%" goto fast
if /i "%~1"=="survey" goto keep
if /i "%~1"=="design" goto keep
"%java%" %options% %UNDERLEE_JAVA_OPTIONS% -jar "%jar%" %*
exit /b %ERRORLEVEL%

:fast
"%java%" %options% %UNDERLEE_JAVA_OPTIONS% -XX:SharedArchiveFile="%archive%" -jar "%jar%" %*
exit /b %ERRORLEVEL%

:keep
set "fresh=%archive%.%RANDOM%"
"%java%" %options% %UNDERLEE_JAVA_OPTIONS% -XX:ArchiveClassesAtExit="%fresh%" -jar "%jar%" %*
set "code=%ERRORLEVEL%"
if exist "%fresh%" move /y "%fresh%" "%archive%" >nul 2>&1
exit /b %code%
